import { OrbitControls } from '@react-three/drei';
import { useFrame, useThree } from '@react-three/fiber';
import { type ComponentRef, useEffect, useRef } from 'react';
import { Vector3 } from 'three';
import type { Session } from '../session/session.ts';
import { lookFor, shotFrom } from './views.ts';

const MOVE_TIME = 0.34;

/** Takes the camera to the viewpoint that is asked for, and lets it be walked round from there. */
export function CameraMan({ session, still }: { session: Session; still: boolean }) {
  const { camera, size, invalidate } = useThree();
  const controls = useRef<ComponentRef<typeof OrbitControls>>(null);
  const move = useRef({
    done: 1,
    fromAt: new Vector3(),
    fromEye: new Vector3(),
    at: new Vector3(),
    eye: new Vector3(),
    key: '',
  });

  useEffect(() => {
    const check = (): void => {
      const { view } = session.store.getState();
      const sim = session.sim();
      const key = `${view} ${sim.pump.rest} ${sim.pump.camUp} ${size.width}x${size.height}`;
      const m = move.current;
      if (key === m.key) return;
      const first = m.key === '';
      m.key = key;
      shotFrom(lookFor(session.definition, view, sim), camera, size, m.at, m.eye);
      m.fromAt.copy(controls.current?.target ?? m.at);
      m.fromEye.copy(camera.position);
      m.done = first || still ? 1 : 0;
      if (m.done === 1) arrive(m.at, m.eye);
      invalidate();
    };
    const arrive = (at: Vector3, eye: Vector3): void => {
      camera.position.copy(eye);
      controls.current?.target.copy(at);
      controls.current?.update();
    };
    check();
    return session.store.subscribe(check);
  }, [session, camera, size, invalidate, still]);

  useFrame((_, delta) => {
    const m = move.current;
    const orbit = controls.current;
    if (m.done >= 1 || orbit === null) return;
    m.done = Math.min(1, m.done + Math.min(delta, 0.05) / MOVE_TIME);
    const ease = 1 - (1 - m.done) ** 3;
    orbit.target.lerpVectors(m.fromAt, m.at, ease);
    camera.position.lerpVectors(m.fromEye, m.eye, ease);
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
      maxDistance={3.4}
      minPolarAngle={0.25}
      maxPolarAngle={2.2}
      onStart={() => {
        move.current.done = 1;
      }}
    />
  );
}
