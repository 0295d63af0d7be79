import { Canvas, events as pointerEvents } from '@react-three/fiber';
import { use, useMemo, useRef, useState } from 'react';
import type { Object3D } from 'three';
import type { Session } from '../session/session.ts';
import { CameraMan } from './CameraMan.tsx';
import { Driver } from './Driver.tsx';
import { Hands } from './Hands.tsx';
import { turnOver } from './handles/carry.ts';
import { emptyHand } from './handles/held.ts';
import { Names } from './labels/Names.tsx';
import { clearMaterial } from './look/clear.ts';
import { opaqueRenderer } from './look/opaqueRenderer.ts';
import { windowShadow } from './look/shadow.ts';
import { cutMaterial, sharedUniforms, surfaceMaterial } from './look/surface.ts';
import { type MarkRefs, Marks } from './Marks.tsx';
import { OtherHand } from './OtherHand.tsx';
import { loadParts } from './parts/loadParts.ts';
import { buildRig, standAtHome } from './rig/rig.ts';
import { shadeRig } from './rig/shadeRig.ts';
import { SceneBoundary } from './SceneBoundary.tsx';
import { useLoosePump } from './useLoosePump.ts';
import { usePictureLost } from './usePictureLost.ts';
import { useStill } from './useStill.ts';
import './benchScene.css';
import './pictureLost.css';

/** Asked for with the bench itself, so that both are under way together. */
const coming = loadParts();

/** The bench in 3D: the set, the pump, the tools, moved by the session's model and moving it. */
export function Bench({ session }: { session: Session }) {
  const [round, setRound] = useState(0);
  return (
    <SceneBoundary>
      <Scene key={round} session={session} onAgain={() => setRound(round + 1)} />
    </SceneBoundary>
  );
}

function Scene({ session, onAgain }: { session: Session; onAgain: () => void }) {
  const still = useStill();
  const loose = useLoosePump(session);
  const parts = use(coming);
  const scene = useMemo(() => {
    const shared = sharedUniforms();
    const veil = { value: 0 };
    const front = surfaceMaterial(shared, { value: 0 });
    const back = surfaceMaterial(shared, veil);
    const ground = surfaceMaterial(shared, veil, 'plain');
    const cut = cutMaterial();
    const rig = buildRig(
      session.definition,
      {
        front: { solid: front, cut },
        back: { solid: back, cut },
        glass: clearMaterial(shared, veil),
        ground,
      },
      parts,
    );
    standAtHome(rig);
    shadeRig(rig);
    return { shadow: windowShadow(shared), surfaces: [front, back, ground], veil, rig, held: emptyHand() };
  }, [session, parts]);
  const refs: MarkRefs = {
    hover: useRef(null),
    ring: useRef(null),
    chosen: useRef(null),
    words: useRef(null),
  };
  const names = useRef<HTMLDivElement>(null);
  const { rig, held } = scene;
  const place = useRef<HTMLDivElement>(null);
  const lost = usePictureLost(place);
  return (
    <div ref={place} className="scene">
      <Canvas
        frameloop="demand"
        dpr={1}
        gl={opaqueRenderer}
        camera={{ fov: 30, near: 0.02, far: 12 }}
        events={(store) => ({
          ...pointerEvents(store),
          filter: (hits) => hits.filter(({ object }) => isShown(object)),
        })}
      >
        <Hands session={session} rig={rig} held={held} still={still} />
        <CameraMan session={session} still={still} />
        <Driver session={session} {...scene} still={still} />
        <Marks session={session} rig={rig} held={held} refs={refs} />
        <Names session={session} rig={rig} place={names} />
      </Canvas>
      <div ref={names} className="scene-names" />
      <OtherHand session={session} held={held} />
      <div ref={refs.ring} className="scene-ring" />
      <div ref={refs.hover} className="scene-tag" />
      <div ref={refs.chosen} className="scene-tag" data-kind="chosen">
        <span />
        {loose ? (
          <button type="button" onClick={() => turnOver({ session, held })}>
            Turn over
          </button>
        ) : null}
      </div>
      <div ref={refs.words} className="scene-tag" data-kind="words" />
      {lost ? <Lost onAgain={onAgain} /> : null}
    </div>
  );
}

/** What is said while the browser has taken the picture away. */
function Lost({ onAgain }: { onAgain: () => void }) {
  return (
    <div className="scene-lost" role="status">
      <p>
        The browser has taken the picture away for the moment. The job is as it was: go on from the lists.
      </p>
      <button type="button" className="button" onClick={onAgain}>
        Set the bench up again
      </button>
    </div>
  );
}

/** Hidden parts let the pointer through. */
function isShown(object: Object3D): boolean {
  for (let one: Object3D | null = object; one !== null; one = one.parent) if (!one.visible) return false;
  return true;
}
