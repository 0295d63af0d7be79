import { MeshBasicMaterial, type Object3D, PerspectiveCamera, Raycaster, Vector2, Vector3 } from 'three';
import setText from '../../models/bench-set/set.json?raw';
import jobFile from '../../scenarios/lambing-shed-lights.json';
import { emptyHand } from '../../src/bench/handles/held.ts';
import { readParts } from '../../src/bench/parts/readParts.ts';
import { type Frame, posePump } from '../../src/bench/rig/posePump.ts';
import { poseSet } from '../../src/bench/rig/poseSet.ts';
import { blankReading, read } from '../../src/bench/rig/reading.ts';
import { buildRig, type Rig, standAtHome } from '../../src/bench/rig/rig.ts';
import { lookFor, shotFrom } from '../../src/bench/views.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { type Scenario, scenarioFrom } from '../../src/jobs/scenario.ts';
import { createSession, type Session } from '../../src/session/session.ts';
import type { SetDefinition } from '../../src/sim/set/definition.ts';
import { bakedParts } from '../../src/solids/bake.ts';
import { definition as solidDefinition } from '../../src/solids/definition.ts';

/** The pump's parts, baked as the build bakes them and read as the bench reads them. */
const parts = await readParts(Uint8Array.from(await bakedParts(solidDefinition, 'parts')).buffer);

/** The definition as the app reads it. */
export function definition(): SetDefinition {
  const set = readSet(setText);
  if (!set.ok) throw new Error('set.json does not read');
  return set.value;
}

function scenario(changes: Scenario['changes'] | null): Scenario {
  const read = scenarioFrom(jobFile);
  if (!read.ok) throw new Error('the scenario does not read');
  return changes === null ? read.value : { ...read.value, changes };
}

/** A scene without a screen: rig, session, and a way to set every part as a frame of the picture would. */
export type Stage = {
  readonly def: SetDefinition;
  readonly session: Session;
  readonly rig: Rig;
  pose(over?: Partial<Frame>): void;
};

/** Opens the first job (or a set with other hidden changes) and poses its scene. */
export function stage(changes: Scenario['changes'] | null = null): Stage {
  const def = definition();
  const session = createSession({ def, scenario: scenario(changes), seed: 1, mode: 'practice' });
  const solid = new MeshBasicMaterial();
  const materials = {
    front: { solid, cut: solid },
    back: { solid, cut: solid },
    glass: solid,
    ground: solid,
  };
  const rig = buildRig(def, materials, parts);
  standAtHome(rig);
  const held = emptyHand();
  const pose = (over: Partial<Frame> = {}): void => {
    const frame: Frame = {
      def,
      sim: session.sim(),
      reading: read(session, blankReading()),
      seconds: 0,
      instant: true,
      section: false,
      apart: 0,
      handled: false,
      ...over,
    };
    posePump(rig, frame, held);
    poseSet(rig, frame, session.store.getState().inHand, held);
    rig.root.updateMatrixWorld(true);
  };
  pose();
  return { def, session, rig, pose };
}

/** Runs a session until nothing moves by itself; throws when that takes over a minute of its time. */
export function untilStill(session: Session): void {
  for (let i = 0; i < 6000; i++) if (!session.advance(0.0101)) return;
  throw new Error('it does not come to rest');
}

type Size = { readonly width: number; readonly height: number };
const WIDE: Size = { width: 1280, height: 720 };

/** The camera of a viewpoint once it has got there. */
export function cameraAt(at: Stage, view: string, size: Size = WIDE): PerspectiveCamera {
  const camera = new PerspectiveCamera(30, size.width / size.height, 0.02, 12);
  const target = new Vector3();
  shotFrom(lookFor(at.def, view, at.session.sim()), camera, size, target, camera.position);
  camera.lookAt(target);
  camera.updateMatrixWorld();
  return camera;
}

/** Where a place in the world appears in the picture from a viewpoint, CSS pixels. */
export function pixelOf(
  at: Stage,
  view: string,
  place: Vector3,
  size: Size = WIDE,
): { x: number; y: number } {
  const p = place.clone().project(cameraAt(at, view, size));
  return { x: ((p.x + 1) / 2) * size.width, y: ((1 - p.y) / 2) * size.height };
}

/** The name of the first visible piece that a ray from a viewpoint's camera to a place meets. */
export function hitTowards(at: Stage, view: string, place: Vector3, size: Size = WIDE): string | null {
  const p = place.clone().project(cameraAt(at, view, size));
  if (Math.abs(p.x) > 1 || Math.abs(p.y) > 1) return 'outside the picture';
  return hitAt(at, view, pixelOf(at, view, place, size), size);
}

/** The name of the first visible piece at a pixel of the picture; of `among` alone, where that is given. */
export function hitAt(
  at: Stage,
  view: string,
  pixel: { readonly x: number; readonly y: number },
  size: Size = WIDE,
  among: Object3D = at.rig.root,
): string | null {
  const ray = new Raycaster();
  const to = new Vector2((pixel.x / size.width) * 2 - 1, 1 - (pixel.y / size.height) * 2);
  ray.setFromCamera(to, cameraAt(at, view, size));
  for (const hit of ray.intersectObject(among, true)) {
    let shown = true;
    let part: string | null = null;
    for (let one = hit.object; one.parent !== null; one = one.parent) {
      if (!one.visible) shown = false;
      if (part === null && typeof one.userData.part === 'string') part = one.userData.part;
    }
    if (shown) return part;
  }
  return null;
}

/** A place given in the pump's own frame (height along its axis from the cam end, m), in the world. */
export function onPump(at: Stage, x: number, height: number, z: number): Vector3 {
  return at.rig.piece('pumpBody').group.localToWorld(new Vector3(x, height, z));
}
