import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { Matrix4, Vector3 } from 'three';
import type { Session } from '../../session/session.ts';
import type { Rig } from '../rig/rig.ts';
import { nameIn } from './items.ts';
import type { Room } from './layout.ts';
import { type NameBoard, nameBoard } from './nameBoard.ts';
import { type Label, type Surveyor, surveyor } from './survey.ts';

/** How long the viewer must have stood still before names are put up, ms; how often moving parts are looked at. */
const CALM = 170;
const AGAIN = 700;
/** What lies over the picture: the strip of tools, the slider at the right. CSS pixels. */
const STRIP = 52;
const SLIDER = 50;
/** Pictures narrower than this have the slider along their lower edge, px. */
const NARROW = 560;

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
  const narrow = size.width < NARROW;
  const room: Room = {
    left: 6,
    right: size.width - (narrow ? 6 : SLIDER),
    top: STRIP,
    bottom: size.height - (narrow ? SLIDER : 10),
    row,
  };
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
    on.localToWorld(at.copy(place)).project(camera);
    board.point(item.number, ((at.x + 1) / 2) * size.width, ((1 - at.y) / 2) * size.height);
  }
}
