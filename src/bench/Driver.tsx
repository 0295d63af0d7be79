import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { Quaternion, type ShaderMaterial, Vector3 } from 'three';
import type { Session } from '../session/session.ts';
import { frameCounter } from './countFrames.ts';
import type { Held } from './handles/held.ts';
import { painter } from './look/painter.ts';
import { pictureSum } from './look/pictureSum.ts';
import { type Fineness, type Managed, qualityKeeper } from './look/quality.ts';
import type { WindowShadow } from './look/shadow.ts';
import { hideDeep } from './rig/hideDeep.ts';
import { type Frame, posePump } from './rig/posePump.ts';
import { poseSet } from './rig/poseSet.ts';
import { blankReading, read } from './rig/reading.ts';
import type { Rig } from './rig/rig.ts';
import { lookFor } from './views.ts';

const LONGEST = 0.1;
/** How far the set is drawn back behind a pump that is pulled apart. */
const VEIL = 0.76;
/** How far shadows are drawn back then: thrown from part to part they would make patches on the thin ones. */
const APART_SHADOW = 0.8;
/** And behind one that is cut. */
const CUT_VEIL = 0.4;
/** How long nothing may have moved before the picture is drawn once more, finely, ms. */
const CALM = 160;
/** One machine draws all pictures of this page. */
const managed: Managed = { rung: Number.POSITIVE_INFINITY };
const FIRST: Fineness = { ratio: 1, shade: 'full', coarse: false, shadowEvery: 1 };

type Props = {
  readonly session: Session;
  readonly rig: Rig;
  readonly shadow: WindowShadow;
  readonly surfaces: readonly ShaderMaterial[];
  /** How far everything but the pump and its line is drawn back, 0..1. */
  readonly veil: { value: number };
  readonly held: Held;
  readonly still: boolean;
};

/** Lets the session's time go by while something moves, sets every part where the model has it, and draws. */
export function Driver({ session, rig, shadow, surfaces, veil, held, still }: Props) {
  const invalidate = useThree((three) => three.invalidate);
  const state = useRef(blankState());
  useEffect(() => session.store.subscribe(() => invalidate()), [session, invalidate]);
  const count = useMemo(frameCounter, []);
  const quality = useMemo(() => qualityKeeper(window.devicePixelRatio, managed), []);
  const paint = useMemo(() => painter(rig.root, surfaces), [rig, surfaces]);
  useEffect(
    () => () => {
      clearTimeout(state.current.calm);
      paint.dispose();
      shadow.dispose();
    },
    [paint, shadow],
  );
  useRestored(() => {
    state.current.sum = Number.NaN;
    state.current.shaded = '';
    invalidate();
  });

  useFrame(({ gl, scene, camera, size }, delta) => {
    const own = state.current;
    // The first delta after a rest carries the whole idle time.
    const seconds = own.resting ? 0 : Math.min(delta, LONGEST);
    const live = session.isLive() && session.advance(seconds);
    const view = session.store.getState();
    own.apart = still ? view.apart : approach(own.apart, view.apart, seconds);
    const frame: Frame = {
      def: session.definition,
      sim: session.shown(),
      reading: read(session, own.reading),
      seconds,
      instant: still,
      section: view.section,
      apart: own.apart,
      handled: held.part !== null,
    };
    veil.value =
      Math.max(own.apart * VEIL, view.section ? CUT_VEIL : 0) * (frame.sim.pump.rest === null ? 1 : 0.6);
    shadow.show(1 - APART_SHADOW * own.apart);
    const moving = posePump(rig, frame, held);
    const shifting = poseSet(rig, frame, view.inHand, held);
    hideDeep(rig, camera.position, view.section);
    const changed = live || moving || shifting || own.apart !== view.apart;
    const key = `${view.view} ${view.section} ${frame.sim.pump.rest} ${frame.sim.pump.camUp}`;
    let isMoved = false;
    if (key !== own.shaded || moving || shifting || own.stale) {
      // While parts are on their way a shadow in some frames will do; the last one is drawn when they are there.
      own.sinceShadow += 1;
      own.stale = changed && key === own.shaded && own.sinceShadow < own.fineness.shadowEvery;
      const look = lookFor(session.definition, view.view, frame.sim);
      if (!own.stale) {
        shadow.draw(gl, scene, own.shade.copy(look.at), Math.min(0.75, look.radius * 2.2 + 0.05));
        own.sinceShadow = 0;
        isMoved = true;
      }
      own.shaded = key;
    }
    const sum = pictureSum(rig, veil.value) + size.width * 7 + size.height * 13;
    if (sum !== own.sum || !own.eye.equals(camera.position) || !own.turn.equals(camera.quaternion))
      isMoved = true;
    own.sum = sum;
    own.eye.copy(camera.position);
    own.turn.copy(camera.quaternion);
    own.resting = !(changed || own.stale);
    if (!own.resting) invalidate();
    // The one frame that the calm after a movement asks for is drawn finely; what has not changed is not drawn again.
    if (isMoved) own.fineness = quality.moving(own.busy ? delta : 0.02);
    else if (own.calmed) own.fineness = quality.resting();
    if (isMoved || own.calmed) {
      paint.draw(gl, scene, camera, own.fineness);
      count(gl, own.fineness, frame.sim.step);
    }
    own.busy = isMoved;
    own.calmed = false;
    if (!isMoved) return;
    clearTimeout(own.calm);
    // a slow machine is given the time of a few frames before it counts as calm
    own.calm = setTimeout(
      () => {
        own.calmed = true;
        invalidate();
      },
      Math.max(CALM, Math.min(1.5, 3 * delta) * 1000),
    );
  }, 1);
  return null;
}

/** Calls `draw` when the browser gives the picture back that it had taken away (a sleeping graphics card does so). */
function useRestored(draw: () => void): void {
  const canvas = useThree((three) => three.gl.domElement);
  const latest = useRef(draw);
  latest.current = draw;
  useEffect(() => {
    const restored = (): void => latest.current();
    canvas.addEventListener('webglcontextrestored', restored);
    return () => canvas.removeEventListener('webglcontextrestored', restored);
  }, [canvas]);
}

function blankState() {
  return {
    resting: true,
    busy: false,
    /** What the picture showed when it was drawn last. */
    sum: Number.NaN,
    eye: new Vector3(),
    turn: new Quaternion(),
    reading: blankReading(),
    apart: 0,
    shade: new Vector3(),
    shaded: '',
    stale: false,
    sinceShadow: 0,
    fineness: FIRST,
    calmed: false,
    calm: undefined as ReturnType<typeof setTimeout> | undefined,
  };
}

function approach(from: number, to: number, seconds: number): number {
  const next = from + (to - from) * Math.min(1, seconds * 9);
  return Math.abs(next - to) < 1e-3 ? to : next;
}
