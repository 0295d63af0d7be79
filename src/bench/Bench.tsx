import { Canvas } from '@react-three/fiber';
import { useMemo } from 'react';
import { NoToneMapping } from 'three';
import type { Session } from '../session/session.ts';
import { CameraMan } from './CameraMan.tsx';
import { Driver } from './Driver.tsx';
import { clearMaterial } from './look/clear.ts';
import { windowShadow } from './look/shadow.ts';
import { cutMaterial, sharedUniforms, surfaceMaterial } from './look/surface.ts';
import { buildRig } from './rig/rig.ts';
import { useStill } from './useStill.ts';

/** The bench in 3D: the set, the pump, the tools, moved by the session's model and moving it. */
export function Bench({ session }: { session: Session }) {
  const still = useStill();
  const scene = useMemo(() => {
    const shared = sharedUniforms();
    const shadow = windowShadow(shared);
    const rig = buildRig(
      session.definition,
      { solid: surfaceMaterial(shared), cut: cutMaterial() },
      clearMaterial(shared),
    );
    return { shadow, rig };
  }, [session]);
  return (
    <Canvas
      frameloop="demand"
      dpr={1}
      gl={{ antialias: false, toneMapping: NoToneMapping }}
      camera={{ fov: 30, near: 0.02, far: 12 }}
      style={{ position: 'absolute', inset: 0, touchAction: 'none' }}
    >
      <primitive object={scene.rig.root} />
      <CameraMan session={session} still={still} />
      <Driver session={session} rig={scene.rig} shadow={scene.shadow} still={still} />
    </Canvas>
  );
}
