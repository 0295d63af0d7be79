import { describe, expect, it } from 'vitest';
import { bleedClear } from '../../../src/jobs/practice/bleedClear.ts';
import { pinInSlot } from '../../../src/jobs/practice/pinInSlot.ts';
import { def } from '../../panels/fixture.ts';
import { type Played, play, subjectsOf } from './played.ts';

/** The plunger out and back the right way round, clean and wet. */
function turnRound(go: Played['go']): void {
  go({ do: 'remove', part: 'retainer', held: true });
  for (const part of ['cup', 'returnSpring', 'plunger'] as const) go({ do: 'remove', part });
  for (const what of ['barrel', 'plunger'] as const) go({ do: 'clean', what, with: 'swab' });
  go({ do: 'fit', part: 'plunger', turned: false, wet: true });
  for (const part of ['returnSpring', 'cup'] as const) go({ do: 'fit', part });
  go({ do: 'fit', part: 'retainer', held: true });
}

function camLow(go: Played['go']): void {
  go({ do: 'holdDecompressor', held: true });
  go({ do: 'turnFlywheel', to: 'lowSide' });
  go({ do: 'holdDecompressor', held: false });
}

/** Refits as the trade does (common practice, no source); what is left out is named. */
function refit({ go, found, job }: Played, without: 'nothing' | 'look' | 'cam' | 'guide' | 'proof'): void {
  go({ do: 'check', what: 'cupEnd' });
  if (found().has('markOpposite') && without !== 'look') turnRound(go);
  if (without !== 'cam') camLow(go);
  if (job.sim.assembly.parts.windowCover === 'fitted' && without !== 'guide')
    go({ do: 'remove', part: 'windowCover' });
  go({ do: 'fit', part: 'pump', guidePin: without !== 'guide' });
  if (without === 'guide' && job.sim.assembly.parts.windowCover === 'fitted')
    go({ do: 'remove', part: 'windowCover' });
  if (without !== 'proof') go({ do: 'check', what: 'pinFollows' });
}

describe('pin in the slot', () => {
  it('is passed by whoever looks, turns the cam low, leads the pin and proves it, at every step', () => {
    for (const level of pinInSlot.levels.keys()) {
      for (const subject of subjectsOf(pinInSlot, level)) {
        const played = play(pinInSlot, subject, level);
        refit(played, 'nothing');
        expect(played.judge(), `${level} ${subject.seed}`).toMatchObject({ right: true });
      }
    }
  });

  it.each([
    ['guide', 0, /pin stands outside the slot/],
    ['proof', 0, /Nobody has seen the pin follow/],
    ['look', 3, /half a turn out/],
    ['cam', 3, /askew on its studs/],
  ] as const)('fails for its reason without the %s', (left, level, reason) => {
    let failed = 0;
    for (const subject of subjectsOf(pinInSlot, level)) {
      const played = play(pinInSlot, subject, level);
      refit(played, left);
      const { right, says } = played.judge();
      if (right) continue;
      failed += 1;
      expect(says.join(' ')).toMatch(reason);
    }
    // at the last step not every pump has the trap
    expect(failed).toBeGreaterThan(level === 0 ? 19 : 5);
  });

  it('hides nothing at the first step and more at each after it', () => {
    const count = (level: number) => pinInSlot.make(def, 3, level)[0]?.acts.length ?? 0;
    expect([0, 1, 2].map(count)).toEqual([...[0, 1, 2].map(count)].sort((a, b) => a - b));
    const traps = (level: number) =>
      subjectsOf(pinInSlot, level).filter(({ scenario }) => scenario.changes.some(({ to }) => to === 1))
        .length;
    expect(traps(0)).toBe(0);
    expect(traps(2)).toBeGreaterThan(4);
  });
});

/** Bleeds as the trade does: by gravity, then through the pipe, lever held, until solid (common practice, no source). */
function bleed(
  { go, found }: Played,
  level: number,
  slips: { held?: boolean; more?: number; gravity?: boolean; pulls?: number },
): void {
  if (level >= 2) {
    go({ do: 'fillTank' });
    go({ do: 'setCap', vented: true });
    go({ do: 'setTap', open: true });
    go({ do: 'moveStopLever', to: 'run' });
  }
  if (level >= 1 && slips.gravity !== false) {
    go({ do: 'loosen', joint: 'bleedScrew', to: 'slack', backup: false });
    go({ do: 'wait', seconds: 30 });
    go({ do: 'tighten', joint: 'bleedScrew', torque: 5, backup: false });
  }
  if (level >= 3) {
    go({ do: 'loosen', joint: 'holder', to: 'slack', backup: false });
    go({ do: 'wait', seconds: 30 });
    go({ do: 'tighten', joint: 'holder', torque: 38, backup: false });
    go({ do: 'fit', part: 'pipe' });
    go({ do: 'tighten', joint: 'pipeAtPump', torque: 25, backup: true });
  } else go({ do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true });
  go({ do: 'holdDecompressor', held: slips.held ?? true });
  let more = slips.more ?? 0;
  for (let pull = 0; pull < (slips.pulls ?? 15); pull += 1) {
    go({ do: 'pullCord', effort: 'firm', letGoAt: null });
    if (found().has('fuelAtUnion')) more -= 1;
    if (more < 0) break;
  }
  go({ do: 'tighten', joint: 'pipeAtInjector', torque: 25, backup: true });
}

describe('bleed until clear', () => {
  it.each([0, 1, 2, 3])(
    'is passed by gravity first and then pull after pull with the lever held, at step %i',
    (level) => {
      for (const subject of subjectsOf(bleedClear, level)) {
        const played = play(bleedClear, subject, level);
        bleed(played, level, {});
        const { right, says } = played.judge();
        expect(right, `${subject.seed} ${says.join(' ')}`).toBe(true);
      }
    },
  );

  it('leaves a line that opens the injector on the next pull (common practice, no source)', () => {
    for (const subject of subjectsOf(bleedClear, 0).slice(0, 5)) {
      const played = play(bleedClear, subject, 0);
      bleed(played, 0, {});
      played.go({ do: 'pullCord', effort: 'firm', letGoAt: null });
      expect(played.found()).toContain('creakHeard');
    }
  });

  it('fails pulling against compression', () => {
    for (const subject of subjectsOf(bleedClear, 0)) {
      const played = play(bleedClear, subject, 0);
      bleed(played, 0, { held: false, pulls: 2 });
      expect(played.judge()).toMatchObject({ right: false });
      expect(played.judge().says.join(' ')).toMatch(/2 of 2 pulls .* hold the lever open/);
    }
  });

  it('fails going on after it is solid', () => {
    for (const subject of subjectsOf(bleedClear, 0)) {
      const played = play(bleedClear, subject, 0);
      bleed(played, 0, { more: 3 });
      expect(played.judge()).toMatchObject({ right: false });
      expect(played.judge().says.join(' ')).toMatch(/3 times more .* fuel in the tray/);
    }
  });

  it('fails leaving out the gravity side, and leaving off too soon, by the air that is left', () => {
    for (const subject of subjectsOf(bleedClear, 1)) {
      const played = play(bleedClear, subject, 1);
      bleed(played, 1, { gravity: false, pulls: 2 });
      expect(played.judge()).toMatchObject({ right: false });
      expect(played.judge().says.join(' ')).toMatch(/mm³ of air stand/);
    }
  });

  it('holds more air, and in more places, at every step', () => {
    const air = (level: number) =>
      subjectsOf(bleedClear, level).map(({ scenario }) =>
        scenario.changes.reduce((sum, { path, to }) => (/[aA]ir$/.test(path) ? sum + to : sum), 0),
      );
    const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
    expect(mean(air(0))).toBeLessThan(mean(air(1)));
    expect(mean(air(2))).toBeLessThan(mean(air(3)));
  });
});
