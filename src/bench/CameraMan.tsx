import { OrbitControls } from '@react-three/drei';
import { useFrame, useThree } from '@react-three/fiber';
import { type ComponentRef, useEffect, useRef } from 'react';
import { Vector3 } from 'three';
import type { Session } from '../session/session.ts';
import { limitsAt, lookFor, shotFrom } from './views.ts';

const MOVE_TIME = 0.34;
/** From nearly straight above. */
const HIGHEST = 0.25;

/** Takes the camera to the viewpoint that is asked for, and lets it be walked round from there. */
export function CameraMan({ session, still }: { session: Session; still: boolean }) {
  const camera = useThree((three) => three.camera);
  const size = useThree((three) => three.size);
  const invalidate = useThree((three) => three.invalidate);
  const setEvents = useThree((three) => three.setEvents);
  const controls = useRef<ComponentRef<typeof OrbitControls>>(null);
  const move = useRef(blankMove());

  useEffect(() => {
    const check = (): void => {
      const { view } = session.store.getState();
      const m = move.current;
      const orbit = controls.current;
      if (orbit === null) return;
      shotFrom(lookFor(session.definition, view, session.sim()), camera, size, to.at, to.eye);
      // Only a look that has changed takes the camera away from where the viewer has walked to.
      if (view === m.view && to.at.equals(m.at) && to.eye.equals(m.eye)) return;
      const first = m.view === '';
      m.view = view;
      m.at.copy(to.at);
      m.eye.copy(to.eye);
      m.fromAt.copy(orbit.target);
      m.fromWay.copy(camera.position).sub(orbit.target);
      m.toWay.copy(m.eye).sub(m.at);
      m.done = first || still ? 1 : 0;
      // On the way only the ends count.
      orbit.maxPolarAngle = Math.PI;
      orbit.minAzimuthAngle = -Infinity;
      orbit.maxAzimuthAngle = Infinity;
      if (m.done === 1) {
        camera.position.copy(m.eye);
        orbit.target.copy(m.at);
        orbit.update();
      }
      invalidate();
    };
    check();
    return session.store.subscribe(check);
  }, [session, camera, size, invalidate, still]);

  useFrame((_, delta) => {
    const m = move.current;
    const orbit = controls.current;
    if (orbit === null) return;
    if (m.done >= 1) {
      const { lowest, widest } = limitsAt(orbit.target, orbit.getDistance(), orbit.getPolarAngle());
      orbit.maxPolarAngle = lowest;
      orbit.minAzimuthAngle = -widest;
      orbit.maxAzimuthAngle = widest;
      return;
    }
    m.done = Math.min(1, m.done + Math.min(delta, 0.05) / MOVE_TIME);
    const ease = 1 - (1 - m.done) ** 3;
    orbit.target.lerpVectors(m.fromAt, m.at, ease);
    // Round the things, not through them: direction and distance each on their own.
    const far = m.fromWay.length() ** (1 - ease) * m.toWay.length() ** ease;
    way.copy(m.fromWay).normalize().lerp(unit.copy(m.toWay).normalize(), ease).setLength(far);
    camera.position.copy(orbit.target).add(way);
    orbit.update();
    invalidate();
  }, -3);

  return (
    <OrbitControls
      ref={controls}
      makeDefault
      enableDamping={false}
      enablePan={false}
      minDistance={0.12}
      maxDistance={3.2}
      minPolarAngle={HIGHEST}
      onStart={() => {
        move.current.done = 1;
        move.current.walking = true;
      }}
      // While the viewer walks round nothing is pointed at: no rays are needed.
      onChange={() => {
        if (move.current.walking && controls.current?.enabled) setEvents({ enabled: false });
      }}
      onEnd={() => {
        move.current.walking = false;
        setEvents({ enabled: true });
      }}
    />
  );
}

function blankMove() {
  return {
    done: 1,
    walking: false,
    view: '',
    at: new Vector3(),
    eye: new Vector3(),
    fromAt: new Vector3(),
    fromWay: new Vector3(),
    toWay: new Vector3(),
  };
}

const to = { at: new Vector3(), eye: new Vector3() };
const way = new Vector3();
const unit = new Vector3();
