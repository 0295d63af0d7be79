import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { Vector3, type WebGLRenderer } from 'three';
import type { Session } from '../session/session.ts';
import type { Held } from './handles/held.ts';
import type { WindowShadow } from './look/shadow.ts';
import { type Frame, posePump } from './rig/posePump.ts';
import { poseSet } from './rig/poseSet.ts';
import { blankReading, read } from './rig/reading.ts';
import type { Rig } from './rig/rig.ts';
import { lookFor } from './views.ts';

const LONGEST = 0.1;

/** Lets the session's time go by while something moves, and sets every part where the model has it. */
export function Driver({
  session,
  rig,
  shadow,
  still,
  held,
}: {
  session: Session;
  rig: Rig;
  shadow: WindowShadow;
  still: boolean;
  held: Held;
}) {
  const invalidate = useThree((three) => three.invalidate);
  const state = useRef({
    resting: true,
    reading: blankReading(),
    apart: session.store.getState().apart,
    shade: new Vector3(),
    shaded: '',
    stale: false,
  });
  useEffect(() => session.store.subscribe(() => invalidate()), [session, invalidate]);
  const count = useMemo(counter, []);

  useFrame(({ gl, scene }, delta) => {
    const own = state.current;
    // The first delta after a rest carries the whole idle time.
    const seconds = own.resting ? 0 : Math.min(delta, LONGEST);
    const live = session.isLive() && session.advance(seconds);
    const view = session.store.getState();
    own.apart = still ? view.apart : approach(own.apart, view.apart, seconds);
    const frame: Frame = {
      def: session.definition,
      sim: session.sim(),
      reading: read(session, own.reading),
      seconds,
      instant: still,
      section: view.section,
      apart: own.apart,
    };
    const moving = posePump(rig, frame, held);
    const shifting = poseSet(rig, frame, view.inHand, held);
    const look = lookFor(session.definition, view.view, frame.sim);
    const key = `${view.view} ${view.section} ${frame.sim.pump.rest}`;
    const changed = live || moving || shifting || own.apart !== view.apart;
    if (key !== own.shaded || changed || own.stale) {
      // A turning engine throws much the same shadow from frame to frame: drawing it in every second is enough.
      own.stale = changed && !own.stale;
      if (!own.stale)
        shadow.draw(gl, scene, own.shade.copy(look.at), Math.min(0.75, look.radius * 2.2 + 0.05));
      own.shaded = key;
    }
    count(gl);
    own.resting = !(changed || own.stale);
    if (!own.resting) invalidate();
  }, -2);
  return null;
}

function approach(from: number, to: number, seconds: number): number {
  const next = from + (to - from) * Math.min(1, seconds * 9);
  return Math.abs(next - to) < 1e-3 ? to : next;
}

/** Counts frames where the page was asked to (`?stats`). */
function counter(): (gl: WebGLRenderer) => void {
  if (!new URLSearchParams(window.location.search).has('stats')) return () => undefined;
  const stats = { drawn: 0, calls: 0, triangles: 0, ratio: 0 };
  Object.assign(globalThis, { __benchStats: stats });
  return (gl) => {
    stats.drawn += 1;
    stats.calls = gl.info.render.calls;
    stats.triangles = gl.info.render.triangles;
    stats.ratio = gl.getPixelRatio();
  };
}
