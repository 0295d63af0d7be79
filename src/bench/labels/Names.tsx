import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { Matrix4, Vector3 } from 'three';
import type { Session } from '../../session/session.ts';
import type { Rig } from '../rig/rig.ts';
import { nameIn } from './items.ts';
import { type NameBoard, nameBoard } from './nameBoard.ts';
import { boxesOver, roomBeside } from './room.ts';
import { type Label, type Surveyor, surveyor } from './survey.ts';

/** How long the viewer must have stood still before names are put up, ms; how often moving parts are looked at. */
const CALM = 170;
const AGAIN = 700;
/** Pieces that turn all the way round: a leader stays where it was put on them. */
const TURNING: ReadonlySet<string> = new Set(['camshaft']);

/** Names the parts that are seen, with leaders, while names are asked for; moves no faster than the picture. */
export function Names({
  session,
  rig,
  place,
}: {
  session: Session;
  rig: Rig;
  place: RefObject<HTMLDivElement | null>;
}) {
  const get = useThree((three) => three.get);
  const own = useRef(blank());
  const eyes = useMemo(() => surveyor(rig, session.definition), [rig, session]);
  useEffect(() => () => eyes.dispose(), [eyes]);
  useEffect(() => {
    const board = place.current === null ? null : nameBoard(place.current);
    own.current.board = board;
    return () => {
      clearTimeout(own.current.timer);
      board?.clear();
    };
  }, [place]);

  useFrame(({ camera, size }) => {
    const o = own.current;
    const { names } = session.store.getState();
    clearTimeout(o.timer);
    if (o.board === null || !names) {
      o.board?.clear();
      o.labels = [];
      return;
    }
    const look = looked.copy(camera.matrixWorld).premultiply(camera.projectionMatrix);
    const walked = !o.look.equals(look);
    o.look.copy(look);
    // While the viewer walks round there is nothing to read.
    o.board.hide(walked);
    if (walked) o.labels = [];
    else follow(o.board, o.labels, camera, size);
    const put = (): void => {
      // While the set moves by itself, labels that stand keep their places: only their leaders follow.
      const { section, apart } = session.store.getState();
      const room = JSON.stringify([section, apart, boxesOver(get().gl.domElement)]);
      if (session.isLive() && o.labels.length > 0 && room === o.room) return;
      o.room = room;
      o.labels = survey(eyes, session, get, o.board);
      o.surveyed = performance.now();
    };
    const due = performance.now() - o.surveyed > AGAIN;
    o.timer = setTimeout(put, !walked && due ? 0 : CALM);
  }, 2);
  return null;
}

function blank() {
  return {
    board: null as NameBoard | null,
    look: new Matrix4(),
    labels: [] as Label[],
    timer: undefined as ReturnType<typeof setTimeout> | undefined,
    surveyed: 0,
    /** What lay over the picture when labels were put up. */
    room: '',
  };
}

const looked = new Matrix4();
const at = new Vector3();

type Get = () => Parameters<Surveyor['look']>[0];

function survey(eyes: Surveyor, session: Session, get: Get, board: NameBoard | null): Label[] {
  if (board === null) return [];
  const { gl, scene, camera, size } = get();
  const { view, section, names } = session.store.getState();
  if (!names) return [];
  const { row, widthOf } = board.type(size.width);
  const room = roomBeside(size, row, boxesOver(gl.domElement));
  const labels = eyes.look({ gl, scene, camera, size }, view, section, room, (item) =>
    widthOf(nameIn(view, item)),
  );
  board.show(
    labels.map(({ item, placed }) => ({ number: item.number, name: nameIn(view, item), placed })),
    size,
  );
  return labels;
}

/** Keeps the leaders' ends on parts that move. */
function follow(
  board: NameBoard,
  labels: readonly Label[],
  camera: Parameters<Surveyor['look']>[0]['camera'],
  size: { width: number; height: number },
): void {
  for (const { item, on, place } of labels) {
    if (item.pieces.some((piece) => TURNING.has(piece))) continue;
    on.localToWorld(at.copy(place)).project(camera);
    board.point(item.number, ((at.x + 1) / 2) * size.width, ((1 - at.y) / 2) * size.height);
  }
}
