import { PerspectiveCamera, Raycaster, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { leverPlaces } from '../../src/bench/engine/controls.ts';
import { fuelPlaces } from '../../src/bench/engine/fuel.ts';
import { dimsOf } from '../../src/bench/form/dims.ts';
import { middleOf } from '../../src/bench/handles/spanner.ts';
import { knownAs, nameOfPiece, piecesOf } from '../../src/bench/names.ts';
import { blankReading } from '../../src/bench/rig/reading.ts';
import { onSet } from '../../src/bench/rig/setPieces.ts';
import { limitsAt, lookFor, shotFrom, viewIds } from '../../src/bench/views.ts';
import { hitTowards, onPump, stage, untilStill } from './scene.ts';

// Building the scene takes a while: one serves all, and only the last test takes something off.
const at = stage();
const middle = (piece: string): Vector3 => middleOf(at.rig.piece(piece));

describe('a ray from a viewpoint meets the part that a person would mean', () => {
  it('over the whole set', () => {
    for (const piece of [
      'tank',
      'generator',
      'pumpBody',
      'cordHandle',
      'lightHammer',
      'vice',
      'tray',
      'airCover',
    ]) {
      // The vice is two pieces of one name: which jaw is in front does not matter.
      expect.soft(knownAs(hitTowards(at, 'set', middle(piece)) ?? ''), piece).toBe(knownAs(piece));
    }
  });

  it('at the pump on the engine', () => {
    const d = dimsOf(at.def, 'body');
    expect.soft(hitTowards(at, 'pump', onPump(at, 0, 0.055, d('upperRadius')))).toBe('pumpBody');
    for (const piece of ['pumpNut1', 'pumpNut2', 'windowCover', 'bleedScrew', 'pipeAtPump']) {
      expect.soft(hitTowards(at, 'pump', middle(piece)), piece).toBe(piece);
    }
    expect
      .soft(hitTowards(at, 'pump', onPump(at, 0.045, dimsOf(at.def, 'body')('inletHeight'), 0.003)))
      .toBe('hose');
  });

  it('on the fuel side and at the injector', () => {
    expect.soft(hitTowards(at, 'fuel', middle('bowl'))).toBe('bowl');
    expect
      .soft(hitTowards(at, 'fuel', onSet(fuelPlaces(at.def).tap).p.add(new Vector3(0, -0.018, 0.014))))
      .toBe('tap');
    expect.soft(hitTowards(at, 'injector', middle('pipeAtInjector'))).toBe('pipeAtInjector');
    const levers = leverPlaces(at.def);
    expect.soft(hitTowards(at, 'injector', onSet(levers.decompressor).p)).toBe('decompressor');
  });

  it('at the levers', () => {
    expect.soft(hitTowards(at, 'set', middle('stopLever'))).toBe('stopLever');
    expect.soft(hitTowards(at, 'set', middle('throttle'))).toMatch(/throttle|quadrant/);
  });
});

describe('a finger on a small picture meets the same part', () => {
  const small = { width: 390, height: 338 };
  it.each([
    ['set', ['tank', 'generator', 'cordHandle']],
    ['pump', ['windowCover', 'bleedScrew', 'pipeAtPump', 'pumpNut1', 'pumpNut2']],
    ['outletEnd', ['pipeAtPump', 'bleedScrew']],
    ['injector', ['pipeAtInjector']],
    ['bench', ['cloth', 'woodBlock', 'anvil']],
  ] as const)('from the viewpoint %s', (view, names) => {
    for (const piece of names) expect.soft(hitTowards(at, view, middle(piece), small), piece).toBe(piece);
  });
});

describe('in the section a ray', () => {
  it('meets what the cut lays open', () => {
    at.pose({ section: true });
    const d = (part: string, key: string): number => dimsOf(at.def, part)(key);
    const cut = (x: number, height: number): string | null =>
      hitTowards(at, 'section', onPump(at, x, height, 0.0002));
    expect.soft(cut(d('body', 'upperRadius') - 0.002, 0.04)).toBe('pumpBody');
    expect.soft(cut(d('barrel', 'lowerRadius') - 0.001, d('barrel', 'from') + 0.03)).toBe('barrel');
    expect.soft(cut(d('holder', 'boreRadius') + 0.0015, d('holder', 'from') + 0.016)).toBe('holder');
    // Cut as drawings cut them (ISO 2162-1, from memory): the spring no longer stands before what it surrounds.
    expect.soft(hitTowards(at, 'section', middle('returnSpring'))).toBe('plunger');
    at.pose();
  });

  it('meets lobe, cup, pin and fork, none of them behind another', () => {
    at.pose({ section: true });
    const d = (part: string, key: string): number => dimsOf(at.def, part)(key);
    const { travel } = at.session.sim().pump;
    const side = d('camshaft', 'lobeWidth') / 2;
    const lobe = onPump(at, side, -d('cup', 'proud') - 0.6 * at.def.cam.baseRadius, 0.005);
    expect.soft(hitTowards(at, 'section', lobe)).toBe('camshaft');
    const floor = onPump(at, d('cup', 'noseRadius') - 0.002, travel - d('cup', 'proud') + 0.002, 1e-4);
    expect.soft(hitTowards(at, 'section', floor)).toBe('cup');
    const pin = at.rig
      .piece('pin')
      .group.localToWorld(new Vector3(0, 0, d('pin', 'root') + d('pin', 'length')));
    expect.soft(hitTowards(at, 'section', pin)).toBe('pin');
    const tine = new Vector3(
      d('fork', 'width') / 2 - 5e-4,
      d('fork', 'pivotBelow') + 0.018,
      d('fork', 'headTo'),
    );
    expect.soft(hitTowards(at, 'section', at.rig.piece('fork').group.localToWorld(tine))).toBe('fork');
    at.pose();
  });

  it('meets the helix on the plunger’s front when it is turned to deliver', () => {
    const { def, session } = at;
    const { travel } = session.sim().pump;
    const [radius, turn] = [def.pump.plungerDiameter / 2, 0.4];
    const plunger = at.rig.piece('plunger').group;
    at.pose({ section: true, reading: { ...blankReading(), travel, turn } });
    // As deep below the crown as the model spills there (R-helix), a little above the edge and a little below.
    const spot = (beyond: number, by: number, r: number): Vector3 => {
      const angle = Math.PI / 2 - beyond;
      const deep = d('barrel', 'portDiameter') + radius * def.pump.helixTangent * (turn + beyond) + by;
      const world = new Vector3(r * Math.sin(angle), d('plunger', 'to') + travel - deep, r * Math.cos(angle));
      return at.rig.piece('pumpBody').group.localToWorld(world);
    };
    const d = (part: string, key: string): number => dimsOf(def, part)(key);
    const depthAt = (place: Vector3): number => {
      const eye = lookFor(def, 'section', session.sim()).from;
      const ray = new Raycaster(place.clone().addScaledVector(eye, 0.05), eye.clone().negate());
      const [hit] = ray.intersectObject(plunger, true);
      const met = plunger.worldToLocal(hit?.point ?? new Vector3(9, 9, 9));
      return radius - Math.hypot(met.x, met.z);
    };
    for (const beyond of [0.4, 0.8, 1.2]) {
      expect.soft(depthAt(spot(beyond, -6e-4, radius))).toBeLessThan(5e-5);
      expect.soft(depthAt(spot(beyond, 9e-4, radius))).toBeGreaterThan(5e-4);
    }
    at.pose();
  });
});

describe('pulled apart a ray', () => {
  it('meets every part of the row', () => {
    at.pose({ apart: 1 });
    // Rings are met on their front, not in their hole.
    for (const piece of ['holder', 'valve', 'barrel', 'pumpBody', 'plunger']) {
      expect.soft(hitTowards(at, 'apart', middle(piece)), piece).toBe(piece);
    }
    at.pose();
  });
});

describe('viewpoints', () => {
  it('have each a look of their own, and an unknown name shows the whole set', () => {
    const keys = viewIds.map((view) => {
      const look = lookFor(at.def, view, at.session.sim());
      return [...look.at.toArray(), ...look.from.toArray(), look.radius].map((x) => x.toFixed(4)).join(' ');
    });
    expect(new Set(keys).size).toBeGreaterThanOrEqual(viewIds.length - 1);
    expect(lookFor(at.def, 'nowhere', at.session.sim())).toEqual(lookFor(at.def, 'set', at.session.sim()));
  });
});

describe('names', () => {
  it('lead from every part of the commands to a piece and back', () => {
    for (const name of [
      'windowCover',
      'hose',
      'pipe',
      'shims',
      'holder',
      'valveSpring',
      'valve',
      'retainer',
      'cup',
      'returnSpring',
      'plunger',
      'airCover',
      'pumpNut1',
      'bleedScrew',
      'tap',
      'cord',
      'flywheel',
    ]) {
      const [piece] = piecesOf(name);
      expect.soft(piece, name).toBeDefined();
      expect.soft(knownAs(piece ?? ''), name).toBe(name);
      expect.soft(nameOfPiece(piece ?? ''), name).not.toBeNull();
    }
  });
});

describe('with the window open, a ray', () => {
  it('meets pin and fork', () => {
    at.session.do({ do: 'remove', part: 'windowCover' });
    at.pose();
    const pin = at.rig.piece('pin').group.localToWorld(new Vector3(0, 0, 0.019));
    expect.soft(hitTowards(at, 'window', pin)).toBe('pin');
    const tine = at.rig
      .piece('fork')
      .group.localToWorld(
        new Vector3(0.0033, dimsOf(at.def, 'fork')('pivotBelow') + 0.016, dimsOf(at.def, 'fork')('headTo')),
      );
    expect.soft(hitTowards(at, 'window', tine)).toBe('fork');
  });
});

describe('no viewpoint', () => {
  it('starts where the eye may not go, on whatever the pump rests', () => {
    const loose = stage();
    for (const joint of ['pipeAtPump', 'pipeAtInjector', 'hoseClip', 'pumpNut1', 'pumpNut2'] as const)
      loose.session.do({ do: 'loosen', joint, to: 'off', backup: true });
    for (const part of ['pipe', 'hose', 'windowCover', 'pump'] as const)
      loose.session.do({ do: 'remove', part, guidePin: true });
    untilStill(loose.session);
    for (const on of ['hand', 'cloth', 'anvil', 'vice', 'viceBody', 'tray'] as const)
      for (const camUp of [true, false]) {
        loose.session.do({ do: 'placePump', on, camUp });
        expect(loose.session.sim().pump.rest).toBe(on);
        for (const view of viewIds) {
          const target = new Vector3();
          const camera = new PerspectiveCamera(30, 16 / 9);
          const look = lookFor(loose.def, view, loose.session.sim());
          shotFrom(look, camera, { width: 1280, height: 720 }, target, camera.position);
          const way = camera.position.clone().sub(target);
          const fromAbove = Math.acos(way.y / way.length());
          const { lowest } = limitsAt(target, way.length(), fromAbove);
          expect.soft(fromAbove, `${view} ${on} ${camUp}`).toBeLessThanOrEqual(lowest);
        }
      }
  });
});
