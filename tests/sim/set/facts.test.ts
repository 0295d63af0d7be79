import { describe, expect, it } from 'vitest';
import type { SimState } from '../../../src/sim/set/state.ts';
import { settle, step } from '../../../src/sim/set/step.ts';
import { def, last, pull, pumpInHand, radians, setWith, stuckUp, work } from './bench.ts';

/** Facts of the trade that nothing in the model states as a rule. Source of each: common practice, no source. */
const restAgainstCompression = radians(-126);

function rested(changes: Parameters<typeof setWith>[0] = []): SimState {
  return setWith([...changes, { path: 'crank.angle', to: restAgainstCompression }]);
}

describe('cranking a healthy set by the cord (common practice, no source)', () => {
  it('stops short of top dead centre from rest against compression with the decompressor released', () => {
    for (const effort of ['weak', 'half', 'firm'] as const) {
      const { told } = pull(rested(), effort, null, false);
      expect(told.passedTdc).toBe(false);
      expect(told.stoppedAt).not.toBeNull();
      expect(told.stoppedAt).toBeLessThan(radians(-20));
    }
  });

  it('spins with the decompressor held, and does not fire however well it sprays', () => {
    const { told, events } = pull(rested(), 'firm', null);
    expect(told.turns).toBeGreaterThan(7);
    expect(told.injected).toBeGreaterThan(1e-7);
    expect(events.some((e) => e.kind === 'fired')).toBe(false);
  });

  it('goes over and fires when it is spun and then released with a firm pull', () => {
    const state = rested();
    const { events } = pull(state, 'firm', 0.6);
    expect(events.some((e) => e.kind === 'started')).toBe(true);
    expect(state.engine.running).toBe(true);
  });

  it('does not fire when it is spun and released with a weak pull', () => {
    for (const share of [0.3, 0.6, 0.9]) {
      const state = rested();
      const { events } = pull(state, 'weak', share);
      expect(events.some((e) => e.kind === 'fired')).toBe(false);
      expect(state.engine.running).toBe(false);
    }
  });

  it('does not fire when the lever is let go only after the rope has run out', () => {
    const state = rested();
    const { events } = pull(state, 'firm', null);
    work(state, [{ do: 'holdDecompressor', held: false }]);
    expect(events.some((e) => e.kind === 'fired')).toBe(false);
  });
});

describe('a seized pump (common practice, no source)', () => {
  it('stuck up delivers nothing over 200 pulls', () => {
    const state = rested(stuckUp(1.2e6));
    for (let i = 0; i < 200; i += 1) {
      const { told } = pull(state, 'firm', null);
      expect(told.injected).toBe(0);
      expect(told.strokes).toBe(0);
    }
    expect(state.pump.travel).toBeGreaterThan(0.0069);
  }, 60_000);

  it('stuck up leaves the spring compressed and the cup recessed', () => {
    const state = pumpInHand(stuckUp(1.2e6));
    const seen = last(work(state, [{ do: 'check', what: 'cupEnd' }]), 'observed').values;
    expect(seen.recessed).toBe(true);
    expect(seen.springForce).toBeGreaterThan(190);
  });

  it('free stands with the cup proud', () => {
    const seen = last(work(pumpInHand([]), [{ do: 'check', what: 'cupEnd' }]), 'observed').values;
    expect(seen.recessed).toBe(false);
  });

  it('a bond stronger than the spring ends stuck up once the engine is turned, whatever travel it stuck at', () => {
    const state = rested([
      { path: 'bond.shear', to: 1.2e6 },
      { path: 'bond.travel', to: 0 },
    ]);
    pull(state, 'firm', null);
    expect(state.pump.travel).toBeGreaterThan(0.0069);
  });

  it('a bond weaker than the spring comes back by itself', () => {
    const state = rested([
      { path: 'bond.shear', to: 1.5e5 },
      { path: 'bond.travel', to: 0 },
    ]);
    pull(state, 'firm', null);
    expect(state.pump.travel).toBeLessThan(0.007);
    expect(pull(state, 'firm', null).told.strokes).toBeGreaterThan(2);
  });
});

describe('the control pin (common practice, no source)', () => {
  const look = (state: SimState) => {
    const events = work(state, [
      { do: 'remove', part: 'windowCover' },
      { do: 'check', what: 'pinFollows' },
    ]);
    return last(events, 'observed').values;
  };

  it('follows the throttle when the plunger is free to turn, and not when it is seized', () => {
    expect(look(rested()).follows).toBe(true);
    expect(look(rested(stuckUp(1.2e6))).follows).toBe(false);
  });

  it('stands still outside the slot though the throttle moves the fork', () => {
    const seen = look(rested([{ path: 'control.pinInSlot', to: 0 }]));
    expect(seen.follows).toBe(false);
    expect(seen.pin).toBe(0);
    expect(seen.fork).toBeGreaterThan(1e-3);
  });

  it('left at full fuel outside the slot, the set runs away and the stop lever does not stop it; a board does', () => {
    const state = rested([
      { path: 'control.pinInSlot', to: 0 },
      { path: 'bond.turn', to: 0.35 },
    ]);
    pullUntilRunning(state);
    const wild = [...step(def, state, [{ do: 'moveStopLever', to: 'stop' }]), ...settle(def, state, 14)];
    expect(wild.some((e) => e.kind === 'ranAway')).toBe(true);
    expect(wild.some((e) => e.kind === 'stopped' && e.why === 'fuel')).toBe(false);
    expect(state.engine.wrecked).toBe(true);
    const again = rested([
      { path: 'control.pinInSlot', to: 0 },
      { path: 'bond.turn', to: 0.35 },
    ]);
    pullUntilRunning(again);
    const stopped = [...step(def, again, [{ do: 'blockInlet', on: true }]), ...settle(def, again, 20)];
    expect(stopped.some((e) => e.kind === 'stopped' && e.why === 'air')).toBe(true);
  });

  it('governed and in its slot, the set stops when the stop lever is moved', () => {
    const state = rested();
    pull(state, 'firm', 0.6);
    expect(state.engine.running).toBe(true);
    const events = [...step(def, state, [{ do: 'moveStopLever', to: 'stop' }]), ...settle(def, state, 30)];
    expect(events.some((e) => e.kind === 'stopped' && e.why === 'fuel')).toBe(true);
  });

  it('bends under a lever before the bond of a hard seizure turns', () => {
    const state = pumpInHand(stuckUp(1.2e6));
    const turn = state.pump.turn;
    const events = work(state, [{ do: 'pushPin', with: 'lever', towards: 'full', force: 120 }]);
    expect(last(events, 'pinPushed').bent).toBeGreaterThan(0.1);
    expect(state.pump.turn).toBe(turn);
    expect(state.damage.some((d) => d.part === 'pin')).toBe(true);
  });

  it('stands a finger, which turns nothing', () => {
    const state = pumpInHand(stuckUp(1.2e6));
    const events = work(state, [{ do: 'pushPin', with: 'finger', towards: 'full', force: 25 }]);
    expect(last(events, 'pinPushed')).toMatchObject({ bent: 0, turned: 0 });
    expect(state.damage).toEqual([]);
  });
});

function pullUntilRunning(state: SimState): void {
  step(def, state, [{ do: 'holdDecompressor', held: true }]);
  step(def, state, [{ do: 'pullCord', effort: 'firm', letGoAt: 0.6 }]);
  for (let i = 0; i < 500 && !state.engine.running; i += 1) step(def, state, []);
  expect(state.engine.running).toBe(true);
}

describe('a plunger fitted half a turn out (common practice, no source)', () => {
  it('gives full fuel that neither throttle nor stop lever governs', () => {
    const state = rested([{ path: 'control.turnedHalf', to: 1 }]);
    pullUntilRunning(state);
    const wild = [...step(def, state, [{ do: 'moveStopLever', to: 'stop' }]), ...settle(def, state, 14)];
    expect(wild.some((e) => e.kind === 'ranAway')).toBe(true);
  });
});

describe('freeing by inertia (common practice, no source)', () => {
  const tap = (state: SimState, target: 'camEnd' | 'outletEnd', speed: number, times: number) => {
    for (let i = 0; i < times; i += 1)
      work(state, [{ do: 'strike', target, hammer: 'medium', speed, block: 'wood' }]);
  };

  it('tapped at the cam end through wood, a stuck-up plunger travels to the cam within a few firm taps', () => {
    for (const on of ['hand', 'cloth'] as const) {
      const state = pumpInHand(stuckUp(1.2e6));
      work(state, [{ do: 'placePump', on, camUp: true }]);
      let taps = 0;
      while (state.pump.travel > 1e-3 && taps < 20) {
        tap(state, 'camEnd', 3, 1);
        taps += 1;
      }
      expect(state.pump.travel).toBeLessThan(1e-3);
      expect(taps).toBeLessThanOrEqual(10);
    }
  });

  it('struck 50 times at the outlet end in the hand or on a cloth, at up to 5 m/s, it does not move', () => {
    for (const on of ['hand', 'cloth'] as const) {
      for (const speed of [1, 2, 3, 4, 5]) {
        const state = pumpInHand(stuckUp(1.2e6));
        work(state, [{ do: 'placePump', on, camUp: false }]);
        const before = state.pump.travel;
        tap(state, 'outletEnd', speed, 50);
        expect(Math.abs(state.pump.travel - before)).toBeLessThan(1e-6);
      }
    }
  });

  it('on an anvil the rebound makes the other end the struck one: the same taps do move it', () => {
    const state = pumpInHand(stuckUp(1.2e6));
    work(state, [{ do: 'placePump', on: 'anvil', camUp: false }]);
    tap(state, 'outletEnd', 5, 50);
    expect(state.pump.travel).toBeLessThan(0.0069);
  });

  it('worked to and fro by hand, the force to move it falls', () => {
    const state = pumpInHand([
      { path: 'bond.shear', to: 3.5e5 },
      { path: 'bond.travel', to: 0 },
    ]);
    work(state, [{ do: 'soak', with: 'diesel' }]);
    const forces: number[] = [];
    for (let i = 0; i < 4; i += 1) {
      const events = work(state, [
        { do: 'pushPlunger', towards: 'outlet', force: 300, twist: 0.2, seconds: 1 },
      ]);
      forces.push(last(events, 'plungerPushed').hold);
    }
    expect(forces[1]).toBeLessThan(forces[0] ?? 0);
    expect(forces[3]).toBeLessThan(0.3 * (forces[0] ?? 0));
  });
});

describe('air (common practice, no source)', () => {
  it('300 mm3 in the line: no start on the first two pulls; bled: a start on the first or second', () => {
    const state = rested([{ path: 'line.air', to: 3e-7 }]);
    for (let i = 0; i < 2; i += 1) {
      pull(state, 'firm', 0.6);
      expect(state.engine.running).toBe(false);
    }
    work(state, [{ do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true }]);
    for (let i = 0; i < 8 && pull(state, 'firm', null).told.lastAirShare > 0.001; i += 1);
    work(state, [{ do: 'tighten', joint: 'pipeAtInjector', torque: 25, backup: true }]);
    pull(state, 'firm', 0.6);
    if (!state.engine.running) pull(state, 'firm', 0.6);
    expect(state.engine.running).toBe(true);
  });

  it('in the plunger chamber: never, until it is bled', () => {
    const state = rested([{ path: 'pump.air', to: 4e-7 }]);
    for (let i = 0; i < 20; i += 1) {
      pull(state, 'firm', 0.6);
      expect(state.line.injectedTotal).toBe(0);
    }
    const { parts } = state.assembly;
    work(state, [
      { do: 'loosen', joint: 'pipeAtPump', to: 'off', backup: true },
      { do: 'loosen', joint: 'pipeAtInjector', to: 'off', backup: true },
      { do: 'remove', part: 'pipe' },
      { do: 'holdDecompressor', held: true },
      { do: 'turnFlywheel', to: 'lowSide' },
      { do: 'loosen', joint: 'holder', to: 'slack', backup: true },
      { do: 'wait', seconds: 20 },
      { do: 'tighten', joint: 'holder', torque: 38, backup: true },
      { do: 'fit', part: 'pipe' },
      { do: 'tighten', joint: 'pipeAtPump', torque: 25, backup: true },
    ]);
    expect(parts.pipe).toBe('fitted');
    expect(state.pump.air).toBe(0);
    for (let i = 0; i < 8; i += 1) pull(state, 'firm', null);
    work(state, [{ do: 'tighten', joint: 'pipeAtInjector', torque: 25, backup: true }]);
    pull(state, 'firm', 0.6);
    if (!state.engine.running) pull(state, 'firm', 0.6);
    expect(state.engine.running).toBe(true);
  });
});

describe('threads (common practice, no source)', () => {
  it('a union far over its torque ruins the injector body', () => {
    const state = rested();
    work(state, [{ do: 'tighten', joint: 'pipeAtInjector', torque: 60, backup: true }]);
    expect(state.damage).toContainEqual({ part: 'injector', what: 'bodyCrushed', at: state.step });
  });

  it('an over-tightened holder binds the pair and then the plunger does not come back', () => {
    const state = rested();
    state.assembly.joints.holder.torque = 75;
    pull(state, 'firm', null);
    expect(pull(state, 'firm', null).told.strokes).toBe(0);
    expect(state.pump.travel).toBeGreaterThan(0.003);
  });
});
