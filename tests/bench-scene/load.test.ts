import { Frustum, Mesh, type Object3D, type PerspectiveCamera } from 'three';
import { describe, expect, it } from 'vitest';
import { hideDeep } from '../../src/bench/rig/hideDeep.ts';
import { viewIds } from '../../src/bench/views.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { cameraAt, stage } from './scene.ts';

// What a picture may hold is set by this project: 300 draw calls, 120,000 triangles, whatever is seen of the set.
const MOST_CALLS = 300;
const MOST_TRIANGLES = 120_000;

const at = stage();
const sim = at.session.sim();
const { assembly, pump, place } = sim;

/** What a camera draws: all that is shown and whose ball touches its picture, as three chooses. */
function load(camera: PerspectiveCamera): { calls: number; triangles: number } {
  const seen = new Frustum().setFromProjectionMatrix(
    camera.projectionMatrix.clone().multiply(camera.matrixWorldInverse),
  );
  let calls = 0;
  let triangles = 0;
  const add = (object: Object3D): void => {
    if (!object.visible) return;
    if (object instanceof Mesh && seen.intersectsObject(object)) {
      const { index, attributes } = object.geometry;
      calls += 1;
      triangles += (index?.count ?? attributes.position.count) / 3;
    }
    object.children.forEach(add);
  };
  add(at.rig.root);
  return { calls, triangles };
}

const off = (parts: readonly (keyof typeof assembly.parts)[]): SimState['assembly'] => ({
  ...assembly,
  parts: { ...assembly.parts, ...Object.fromEntries(parts.map((id) => [id, 'tray'])) },
});
const PUMP_OFF = off(['pump', 'pipe', 'hose']);
const STRIPPED = off([
  ...(['pump', 'pipe', 'hose', 'windowCover', 'retainer', 'cup', 'plunger', 'returnSpring'] as const),
  ...(['holder', 'valve', 'valveSpring', 'shims', 'airCover'] as const),
]);

const states: Readonly<Record<string, Partial<SimState>>> = {
  'as it is found': {},
  'with every thing of the place about': {
    place: {
      ...place,
      loadIsolated: true,
      extinguisher: true,
      trayUnder: true,
      eyeProtection: false,
      hearingProtection: false,
    },
    supply: { ...sim.supply, spilledOutside: 1e-5 },
  },
  'with the window open': { assembly: off(['windowCover']) },
  'with the pump in the hand': { assembly: PUMP_OFF, pump: { ...pump, rest: 'hand' } },
  'with the pump in the vice, cam end up': {
    assembly: PUMP_OFF,
    pump: { ...pump, rest: 'vice', camUp: true },
  },
  'with the pump stripped on the tray': {
    assembly: STRIPPED,
    pump: { ...pump, rest: 'tray' },
    control: { ...sim.control },
  },
};

describe('what is drawn at most', () => {
  it.each(Object.entries(states))('%s: whole, cut and pulled apart, from every viewpoint', (_, state) => {
    for (const view of viewIds) {
      for (const section of [false, true]) {
        for (const apart of [0, 1]) {
          at.pose({ sim: { ...sim, ...state }, section, apart });
          const camera = cameraAt(at, view);
          hideDeep(at.rig, camera.position, section);
          const { calls, triangles } = load(camera);
          expect(calls).toBeLessThan(MOST_CALLS);
          expect(triangles, `${view} ${section ? 'cut' : 'whole'} ${apart}`).toBeLessThan(MOST_TRIANGLES);
        }
      }
    }
  });
});
