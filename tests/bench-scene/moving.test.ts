import { Box3, Quaternion, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { dimsOf } from '../../src/bench/form/dims.ts';
import { CORD_WAY } from '../../src/bench/rig/poseSet.ts';
import type { Reading } from '../../src/bench/rig/reading.ts';
import { viceOpening } from '../../src/bench/rig/spots.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { stage } from './scene.ts';

// Where each part must be follows from the model's own figures and the shapes of the definition: derived, no source.
const at = stage();
const { def, rig } = at;
const sim = at.session.sim();
const still: Reading = { theta: 0, camAngle: 0, travel: 0, turn: 0, fork: 0, rope: 0, throttle: 0 };

function show(reading: Partial<Reading>, state: Partial<SimState> = {}): void {
  at.pose({ reading: { ...still, ...reading }, sim: { ...sim, ...state } });
}
const place = (id: string): Vector3 => rig.piece(id).group.position.clone();
const turn = (id: string): Quaternion => rig.piece(id).group.quaternion.clone();
/** Turn from one pose to another, rad, without its sense. */
const between = (a: Quaternion, b: Quaternion): number => a.angleTo(b);
const overBody = (id: string): number => place(id).y - place('pumpBody').y;

describe('every moving part stands where the model has it', () => {
  it('flywheel: turned by the crank’s angle about the crank', () => {
    show({ theta: 0 });
    const home = turn('flywheel');
    for (const theta of [0.3, 1.2, 2.9]) {
      show({ theta });
      expect(between(home, turn('flywheel'))).toBeCloseTo(theta, 6);
      const axis = new Vector3(1, 0, 0).applyQuaternion(turn('flywheel'));
      expect(axis.x).toBeCloseTo(1, 9);
    }
  });

  it('plunger, cup, plate and pin: along the axis by the travel; plunger and pin turned by the turn', () => {
    show({});
    const [plunger, pin] = [turn('plunger'), turn('pin')];
    const pinUp = overBody('pin');
    for (const travel of [0, 0.002, def.pump.topStop]) {
      show({ travel, turn: 0.4 });
      for (const id of ['plunger', 'cup', 'springPlate']) expect(overBody(id), id).toBeCloseTo(travel, 9);
      expect(overBody('pin') - pinUp).toBeCloseTo(travel, 9);
      expect(between(plunger, turn('plunger'))).toBeCloseTo(0.4, 6);
      expect(between(pin, turn('pin'))).toBeCloseTo(0.4, 6);
    }
    show({ turn: 0.4 }, { pump: { ...sim.pump, turnedHalf: true } });
    expect(between(plunger, turn('plunger'))).toBeCloseTo(Math.PI - 0.4, 6);
  });

  it('return spring: foot on the plate, head on the ledge, at every travel', () => {
    for (const travel of [0, 0.003, def.pump.topStop]) {
      show({ travel });
      const box = new Box3().setFromObject(rig.piece('returnSpring').whole, true);
      const foot = place('pumpBody').y;
      expect(box.max.y - foot).toBeCloseTo(dimsOf(def, 'body')('ledgeFrom'), 4);
      expect(box.min.y - foot).toBeCloseTo(dimsOf(def, 'returnSpring')('installedFrom') + travel, 4);
    }
  });

  it('a bent pin: turned aside by its bend', () => {
    show({});
    const straight = turn('pin');
    show({}, { condition: { ...sim.condition, pinBend: 0.2 } });
    expect(between(straight, turn('pin'))).toBeCloseTo(0.2, 6);
  });

  it('delivery valve: lifted as its collar comes out of the seat, its spring with it', () => {
    show({});
    const shut = overBody('valve');
    const lift = (collar: number): number => {
      show({}, { pump: { ...sim.pump, collar } });
      return overBody('valve') - shut;
    };
    expect(lift(0)).toBeCloseTo(0, 9);
    // A collar fills what it leaves: lift times its area is the model's volume (a cylinder), to the drawing's width.
    const full = lift(def.pump.retraction);
    expect(full).toBeGreaterThan(0.0005);
    expect(lift(def.pump.retraction / 2)).toBeCloseTo(full / 2, 9);
    const spring = new Box3().setFromObject(rig.piece('valveSpring').whole, true);
    show({});
    const seated = new Box3().setFromObject(rig.piece('valveSpring').whole, true);
    expect(spring.max.y).toBeCloseTo(seated.max.y, 4);
    expect(spring.min.y - seated.min.y).toBeCloseTo(full / 2, 4);
  });

  it('cord and handle: drawn out by the rope that the model has off the pulley', () => {
    show({ rope: 0.1 });
    const from = place('cordHandle');
    show({ rope: 0.4 });
    const way = place('cordHandle').sub(from);
    expect(way.length()).toBeCloseTo(0.3, 6);
    expect(way.normalize().dot(CORD_WAY)).toBeCloseTo(1, 6);
    expect(rig.piece('cord').group.scale.y).toBeCloseTo(0.4, 1);
  });

  it('levers, tap and cap: at their two ends, and the throttle in between', () => {
    const angles = (id: string, a: Partial<SimState>, b: Partial<SimState>): number => {
      show({}, a);
      const first = turn(id);
      show({}, b);
      return between(first, turn(id));
    };
    const control = (change: Partial<SimState['control']>): Partial<SimState> => ({
      control: { ...sim.control, ...change },
    });
    const supply = (change: Partial<SimState['supply']>): Partial<SimState> => ({
      supply: { ...sim.supply, ...change },
    });
    expect(
      angles('stopLever', control({ stopLever: 'run' }), control({ stopLever: 'stop' })),
    ).toBeGreaterThan(0.4);
    expect(
      angles('decompressor', control({ decompressorHeld: false }), control({ decompressorHeld: true })),
    ).toBeGreaterThan(0.3);
    // A quarter turn, handle across the pipe when closed: common practice, no source.
    expect(angles('tap', supply({ tapOpen: true }), supply({ tapOpen: false }))).toBeCloseTo(Math.PI / 2, 6);
    expect(angles('cap', supply({ capVented: true }), supply({ capVented: false }))).toBeGreaterThan(0.5);
    const turns = [0, 0.5, 1].map((throttle) => {
      show({ throttle });
      return turn('throttle');
    });
    const [low = new Quaternion(), half = low, high = low] = turns;
    expect(between(low, half)).toBeCloseTo(between(half, high), 6);
    expect(between(low, high)).toBeGreaterThan(0.5);
  });

  it('nuts, holder and bleed screw: out by their threads’ pitch for every turn, more when off', () => {
    const joints = sim.assembly.joints;
    for (const id of ['pumpNut1', 'pumpNut2', 'holder', 'bleedScrew'] as const) {
      show({});
      const [tight, facing] = [place(id), turn(id)];
      show(
        {},
        {
          assembly: { ...sim.assembly, joints: { ...joints, [id]: { ...joints[id], at: 'slack' } } },
        },
      );
      const out = place(id).sub(tight);
      const axis = new Vector3(0, 1, 0).applyQuaternion(facing);
      expect(out.length(), id).toBeGreaterThan(0.0005);
      expect(out.length(), id).toBeLessThan(0.003);
      expect(out.normalize().dot(axis), id).toBeCloseTo(1, 6);
      expect(between(facing, turn(id)), id).toBeGreaterThan(0.1);
    }
  });

  it('fuel in the sight tube and water in the bowl: as high as the model has them', () => {
    const level = (share: number): number => {
      show({}, { supply: { ...sim.supply, tank: share * def.supply.tankVolume } });
      return rig.fuel.level.group.scale.y;
    };
    expect(level(0.5) / level(1)).toBeCloseTo(0.5, 6);
    const water = (share: number): number => {
      show({}, { supply: { ...sim.supply, water: share * def.supply.bowlVolume } });
      return rig.fuel.water.group.scale.y;
    };
    expect(water(0.3) / water(0.6)).toBeCloseTo(0.5, 6);
  });

  it('the vice’s jaws: as wide as what they hold', () => {
    for (const rest of ['vice', 'viceBody'] as const) {
      show({}, { pump: { ...sim.pump, rest: null } });
      const shut = place('viceSlide').z;
      show({}, { pump: { ...sim.pump, rest, camUp: true } });
      expect(place('viceSlide').z - shut).toBeCloseTo(viceOpening(def, rest) - viceOpening(def, null), 6);
    }
  });
});
