import { describe, expect, it } from 'vitest';
import setText from '../../models/bench-set/set.json?raw';
import { readSet } from '../../src/jobs/readSet.ts';
import { helixStroke } from '../../src/sim/laws/helix.ts';
import { atan2 } from '../../src/sim/laws/maths.ts';
import { camAngle, camLift } from '../../src/sim/set/kinematics.ts';
import { camRise } from '../../src/solids/camLaw.ts';
import { flawsOf } from '../../src/solids/check.ts';
import { valveSeatEdge } from '../../src/solids/parts/outlet.ts';
import { middleTurn } from '../../src/solids/parts/plunger.ts';
import { massOf } from '../../src/solids/solids.ts';
import { solids } from './built.ts';

const { def, of } = solids;
const read = readSet(setText);
if (!read.ok) throw new Error('set.json does not read');
const set = read.value;
const mass = (...ids: string[]): number => ids.reduce((sum, id) => sum + massOf(solids, of(id)), 0);

describe('the solids', () => {
  it('are all watertight, in one piece, and pierced as often as drawn', () => {
    expect(flawsOf(solids)).toEqual([]);
  });

  it('weigh what the model’s moving parts weigh: plunger, pin, cup, plate and a third of the spring', () => {
    // a third of a spring's mass moves with its end: derived, the kinetic energy of a uniform spring
    const moving = mass('plunger', 'pin', 'cup', 'springPlate') + mass('returnSpring') / 3;
    expect(Math.abs(moving / set.pump.movingMass - 1)).toBeLessThan(0.02);
  });

  it('weigh what the model’s loose pump weighs without its moving parts', () => {
    const outside = mass('pumpBody', 'windowCover', 'coverScrew1', 'coverScrew2', 'inlet', 'inletSeal');
    const inside = mass('barrel', 'retainer', 'valveSeat', 'valve', 'valveSpring', 'holder');
    const screwed = mass('bleedScrew', 'bleedSeal');
    const loose = outside + inside + screwed + (mass('returnSpring') * 2) / 3;
    expect(Math.abs(loose / set.pump.bodyMass - 1)).toBeLessThan(0.02);
  });
});

describe('the cam that is cut', () => {
  it('rises by the model’s lift at every angle', () => {
    for (let i = 0; i < 400; i++) {
      const theta = -2 * Math.PI + (i / 400) * 4 * Math.PI;
      const angle = Math.atan2(Math.sin(camAngle(set, theta)), Math.cos(camAngle(set, theta)));
      expect(camRise(def, angle).lift).toBeCloseTo(camLift(set, theta), 12);
    }
  });

  it('lifts a flat follower on the solid itself by the model’s lift', () => {
    const width = solids.shop.kernel.Manifold.cube([def.shapes.camshaft.lobeWidth, 0.1, 0.1], true);
    const lobe = of('camshaft').shape.intersect(width);
    for (let i = 0; i < 60; i++) {
      const theta = -2 * Math.PI + (i / 60) * 4 * Math.PI;
      const turned = lobe.rotate((camAngle(set, theta) * 180) / Math.PI, 0, 0);
      const lift = turned.boundingBox().max[1] - set.cam.baseRadius;
      expect(Math.abs(lift - camLift(set, theta))).toBeLessThan(3e-5);
    }
  });
});

describe('the plunger that is cut', () => {
  const radius = def.pump.plungerDiameter / 2;
  const top = def.shapes.plunger.to;
  /** First steel met going up the head's flank from just above its foot, m; null when none is met. */
  const edgeAt = (turn: number): number | null => {
    // The stop groove faces the spill port, on the right, at no turn.
    const angle = Math.PI / 2 - turn;
    const [x, z] = [Math.sin(angle) * (radius - 0.4e-3), Math.cos(angle) * (radius - 0.4e-3)];
    const low = top - def.shapes.plunger.reliefHeight + 0.3e-3;
    const [hit] = of('plunger').shape.rayCast([x, low, z], [x, top + 1e-3, z]);
    return hit === undefined ? null : hit.position[1];
  };

  it('has its control edge where the model’s helix spills, up to start fuel', () => {
    const lead = atan2(set.pump.helixTangent, 1);
    const start = 2 * middleTurn(def);
    for (let turn = 0.3; turn <= start; turn += 0.05) {
      const drawn = top - (edgeAt(turn) ?? Number.NaN) - def.shapes.barrel.portDiameter;
      expect(Math.abs(drawn - helixStroke(set.pump.plungerDiameter, lead, turn))).toBeLessThan(3e-5);
    }
  });

  it('has a stop groove open to the top, so that at no turn nothing can be shut off', () => {
    expect(edgeAt(0)).toBeNull();
    expect(edgeAt(0.1)).toBeNull();
    expect(edgeAt(Math.PI)).not.toBeNull();
  });
});

describe('barrel and valve', () => {
  it('has its feed port open from outside to the bore, and its spill port too', () => {
    const { portCentre, collarRadius } = def.shapes.barrel;
    const way = (from: number, to: number): number =>
      of('barrel').shape.rayCast([from, portCentre, 0], [to, portCentre, 0]).length;
    expect(way(-collarRadius - 1e-3, 0)).toBe(0);
    // The spill drilling slants down behind its port: level with the port there is steel farther out.
    expect(way(0, def.pump.plungerDiameter / 2 + 0.6e-3)).toBe(0);
    const down = Math.tan((16 * Math.PI) / 180);
    const out = 9e-3;
    const mouth = portCentre - (out - def.pump.plungerDiameter / 2 - 0.9e-3) * down;
    expect(
      of('barrel').shape.rayCast([out, mouth, 0], [def.pump.plungerDiameter / 2, portCentre, 0]),
    ).toEqual([]);
  });

  it('has an unloading collar that draws the model’s retraction volume out of the line', () => {
    const edge = valveSeatEdge(def);
    const { Manifold } = solids.shop.kernel;
    const slice = Manifold.cube([0.02, def.shapes.deliveryValve.collarHeight, 0.02], true).translate(
      0,
      edge - def.shapes.deliveryValve.collarHeight / 2,
      0,
    );
    const volume = of('valve').shape.intersect(slice).volume();
    expect(Math.abs(volume / set.pump.retraction - 1)).toBeLessThan(0.02);
  });
});

describe('the nozzle', () => {
  it('has seat and guide whose areas give the model’s closing pressure', () => {
    // derived: the needle opens against the ring outside its seat and shuts against its whole section
    const { seatRadius, needleRadius } = def.shapes.nozzle;
    const ratio = 1 - (seatRadius / needleRadius) ** 2;
    expect(ratio).toBeCloseTo(set.injector.closingPressure / set.injector.openingPressure, 3);
    expect(2 * of('needle').shape.boundingBox().max[0]).toBeCloseTo(2 * needleRadius, 5);
  });

  it('has as many spray holes as the model: every one is a way out of the sac', () => {
    expect(of('nozzle').shape.genus()).toBe(set.injector.holes + 1);
  });

  it('holds its needle without overlap', () => {
    const both = of('nozzle').shape.intersect(of('needle').shape);
    expect(both.volume()).toBeLessThan(1e-12);
  });
});
