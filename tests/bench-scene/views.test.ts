import fc from 'fast-check';
import { Box3, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { pulledApart } from '../../src/bench/rig/posePump.ts';
import { limitsAt } from '../../src/bench/views.ts';
import type { RestId } from '../../src/sim/set/commands.ts';
import { pixelOf, stage, untilStill } from './scene.ts';

/** The picture beside the card, and on a telephone; CSS pixels. */
const sizes = [
  { width: 940, height: 586 },
  { width: 390, height: 338 },
];
/** Height of the row of buttons over the picture, CSS pixels. */
const BUTTONS = 44;
const row = [
  'holder',
  'valveSpring',
  'valve',
  'valveSeat',
  'barrel',
  'pumpBody',
  'returnSpring',
  'springPlate',
  'plunger',
  'cup',
  'retainer',
];

const at = stage();

/** Checks that all corners of a piece's box are in the picture and under the buttons. */
function isInside(view: string, piece: string): void {
  const box = new Box3().setFromObject(at.rig.piece(piece).whole, true);
  for (const size of sizes)
    for (const x of [box.min.x, box.max.x])
      for (const y of [box.min.y, box.max.y])
        for (const z of [box.min.z, box.max.z]) {
          const p = pixelOf(at, view, new Vector3(x, y, z), size);
          expect.soft(p.x, piece).toBeGreaterThan(0);
          expect.soft(p.x, piece).toBeLessThan(size.width);
          expect.soft(p.y, piece).toBeGreaterThan(BUTTONS);
          expect.soft(p.y, piece).toBeLessThan(size.height);
        }
}

describe('a viewpoint shows all of what it is named after', () => {
  it('the set from its frame to the tank’s cap', () => {
    at.pose();
    for (const piece of ['frame', 'tank', 'cap', 'generator', 'starter', 'pumpBody']) isInside('set', piece);
  });

  it('the pump on the engine, and the window', () => {
    isInside('pump', 'pumpBody');
    isInside('window', 'windowCover');
  });

  it('the outlet and the cam end of the pump on the engine', () => {
    isInside('outletEnd', 'holder');
    isInside('camEnd', 'cup');
  });

  it('bowl and tap on the fuel side, the union at the injector', () => {
    for (const piece of ['bowl', 'tap']) isInside('fuel', piece);
    isInside('injector', 'pipeAtInjector');
  });
});

describe('a pump that is pulled apart', () => {
  it('lies in a row in the order of its assembly, once its parts are clear of one another', () => {
    for (const apart of [0.6, 1]) {
      at.pose({ apart });
      const heights = row.map((piece) => {
        const { whole } = at.rig.piece(piece);
        return new Box3().setFromObject(whole, true).getCenter(new Vector3()).y;
      });
      const falling = heights.every((y, i) => i === 0 || y < (heights[i - 1] ?? 0));
      expect(falling, `at ${apart}: ${heights.map((y) => y.toFixed(3))}`).toBe(true);
    }
  });

  it('keeps every part on the pump’s axis', () => {
    at.pose({ apart: 1 });
    const axis = at.rig.piece('pumpBody').group.position;
    for (const piece of row) {
      const { position } = at.rig.piece(piece).group;
      expect(Math.hypot(position.x - axis.x, position.z - axis.z)).toBeLessThan(1e-9);
    }
  });

  it('is all in the picture on the engine, with nothing driven into the deck', () => {
    at.pose({ apart: 1 });
    for (const piece of [...row, 'studs']) isInside('apart', piece);
    const deck = new Box3().setFromObject(at.rig.piece('studs').whole, true).max.y;
    expect(new Box3().setFromObject(at.rig.piece('retainer').whole, true).min.y).toBeGreaterThan(deck);
  });

  it('has ends where the look takes them to be', () => {
    at.pose({ apart: 1 });
    const foot = at.rig.piece('pumpBody').group.position.y;
    const all = row.map((piece) => new Box3().setFromObject(at.rig.piece(piece).whole, true));
    expect(Math.max(...all.map(({ max }) => max.y)) - foot).toBeCloseTo(pulledApart.high, 2);
    expect(Math.min(...all.map(({ min }) => min.y)) - foot).toBeCloseTo(pulledApart.low, 2);
  });

  it.each(['hand', 'cloth', 'anvil', 'vice', 'tray'] satisfies RestId[])(
    'is all in the picture from the %s',
    (on) => {
      loosen();
      for (const camUp of [true, false]) {
        at.session.do({ do: 'placePump', on, camUp });
        untilStill(at.session);
        at.pose({ apart: 1 });
        for (const piece of row) isInside('apart', piece);
      }
    },
  );
});

/** Takes the pump off by the shortest way, right or wrong. */
function loosen(): void {
  if (at.session.sim().pump.rest !== null) return;
  const { session } = at;
  for (const joint of ['pipeAtPump', 'pipeAtInjector', 'hoseClip', 'pumpNut1', 'pumpNut2'] as const)
    session.do({ do: 'loosen', joint, to: 'off', backup: true });
  for (const part of ['pipe', 'hose', 'windowCover', 'pump'] as const)
    session.do({ do: 'remove', part, guidePin: true });
  untilStill(session);
  expect(session.sim().pump.rest).not.toBeNull();
}

describe('the eye', () => {
  it('never goes through the wall nor, close up, into the bench', () => {
    const place = fc.record({
      x: fc.double({ min: -0.6, max: 0.9, noNaN: true }),
      y: fc.double({ min: 0.03, max: 0.4, noNaN: true }),
      z: fc.double({ min: -0.2, max: 0.3, noNaN: true }),
    });
    fc.assert(
      fc.property(
        place,
        fc.double({ min: 0.12, max: 3.2, noNaN: true }),
        fc.double({ min: 0.25, max: 3, noNaN: true }),
        fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
        ({ x, y, z }, distance, wantedPolar, wantedAzimuth) => {
          // As the controls do it: the wish is cut to the limits, first from above, then round.
          const target = new Vector3(x, y, z);
          const polar = Math.min(wantedPolar, limitsAt(target, distance, wantedPolar).lowest);
          const { widest } = limitsAt(target, distance, polar);
          const azimuth = Math.max(-widest, Math.min(widest, wantedAzimuth));
          const eye = target.clone().add(new Vector3().setFromSphericalCoords(distance, polar, azimuth));
          expect(eye.z).toBeGreaterThan(-1.2);
          if (distance < 0.7) expect(eye.y).toBeGreaterThan(0);
        },
      ),
    );
  });
});
