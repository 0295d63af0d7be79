import { describe, expect, it } from 'vitest';
import { compression } from '../../../src/jobs/practice/compression.ts';
import { truthOf } from '../../../src/jobs/practice/reading.ts';
import { readPump } from '../../../src/jobs/practice/readPump.ts';
import { def } from '../../panels/fixture.ts';
import { type Played, play, subjectsOf } from './played.ts';

/** Handles a pump and answers by what the trade makes of it (common practice, no source); never by what is hidden. */
function readIt({ go, found }: Played, level: number): string {
  go({ do: 'check', what: 'cupEnd' });
  go({ do: 'check', what: 'plungerTravel' });
  go({ do: 'check', what: 'pinTurn' });
  if (level >= 3) valveOut(go);
  go({ do: 'placePump', on: 'hand', camUp: true });
  go({ do: 'pushPlunger', towards: 'cam', force: 280, twist: 0, seconds: 2 });
  const seen = found();
  if (seen.has('markOpposite')) return 'plungerHalfTurnOut';
  if (seen.has('pinBentSeen')) return 'pinBent';
  if (seen.has('holderOverTight')) return 'pairBinding';
  if (seen.has('springGone')) return 'returnSpringBroken';
  if (seen.has('dragsUnderPush')) return 'plungerSticky';
  if (seen.has('cupRecessed')) return 'plungerStuckUp';
  if (seen.has('plungerStuck')) return 'plungerStuckDown';
  if (seen.has('pinHeld')) return 'plungerStuckInRotation';
  if (seen.has('seatLeaks')) return 'deliveryValveLeaking';
  return level >= 3 && isWorn(go, found) ? 'wornPair' : 'sound';
}

function valveOut(go: Played['go']): void {
  go({ do: 'placePump', on: 'vice', camUp: false });
  go({ do: 'loosen', joint: 'holder', to: 'off', backup: false });
  for (const part of ['holder', 'valveSpring', 'valve'] as const) go({ do: 'remove', part });
  go({ do: 'check', what: 'valveSeat' });
}

function isWorn(go: Played['go'], found: Played['found']): boolean {
  go({ do: 'remove', part: 'retainer', held: true });
  for (const part of ['cup', 'returnSpring', 'plunger'] as const) go({ do: 'remove', part });
  go({ do: 'check', what: 'plungerFace' });
  return found().has('faceScored');
}

/** Turns a set over by hand, listens, feels the lever (common practice, no source). */
function feelIt({ go, found }: Played, level: number): string {
  if (level >= 3) {
    go({ do: 'remove', part: 'airCover' });
    go({ do: 'check', what: 'airElement' });
  }
  go({ do: 'check', what: 'decompressorPlay' });
  go({ do: 'turnFlywheel', to: 'compression' });
  go({ do: 'check', what: 'blowBy' });
  const seen = found();
  if (seen.has('decompressorNoPlay')) return 'decompressorNotClosing';
  if (seen.has('airBlocked')) return 'airInletBlocked';
  if (seen.has('blowsAtInlet')) return 'inletValveLeaking';
  if (seen.has('blowsAtExhaust')) return 'exhaustValveLeaking';
  return seen.has('blowsAtBreather') ? 'ringsWorn' : 'sound';
}

describe.each([
  ['read the pump', readPump, readIt],
  ['compression by hand', compression, feelIt],
] as const)('%s', (_name, piece, reader) => {
  it.each([0, 1, 2, 3])('is told right by somebody who looks at everything, at step %i', (level) => {
    const told = new Set<string>();
    for (const subject of subjectsOf(piece, level)) {
      const played = play(piece, subject, level);
      const said = reader(played, level);
      told.add(said);
      expect(said, String(subject.seed)).toBe(truthOf(subject));
      // what is said of it takes every look twice more: once a round is enough
      if (subject.name.endsWith('A') && level % 3 === 0) expect(played.judge(said).right).toBe(true);
    }
    // every answer that the step offers was the right one at some time
    for (const { id } of piece.answers([], level)) expect(told).toContain(id);
  });

  it('calls every other answer wrong, says what it is and what would have shown it', () => {
    for (const [index, subject] of subjectsOf(piece, 1).entries()) {
      if (!subject.name.endsWith('A')) continue;
      const others = piece.answers([], 1).filter(({ id }) => id !== truthOf(subject));
      const { right, says } = play(piece, subject, 1).judge(others[index % others.length]?.id);
      expect(right).toBe(false);
      expect(says.join(' ')).toMatch(/Not so: .* What shows it: .* You did not /);
    }
  });

  it('takes nothing for right that nobody looked at', () => {
    const [subject] = piece.make(def, 22, 0);
    if (subject === undefined) throw new Error('no subject');
    const { right, says } = play(piece, subject, 0).judge(truthOf(subject));
    expect(right).toBe(false);
    expect(says.join(' ')).toMatch(/^True, but a guess/);
  });

  it('offers more to tell apart at every step', () => {
    const counts = [...piece.levels.keys()].map((level) => piece.answers([], level).length);
    expect([...counts].sort((a, b) => a - b)).toEqual(counts);
    expect(counts.at(-1)).toBeGreaterThan(counts[0] ?? 0);
  });
});

describe('compression by hand, how weak', () => {
  it('leaks less at the last step than at the first', () => {
    const leaks = (level: number) =>
      subjectsOf(compression, level).flatMap(({ scenario }) =>
        scenario.changes.flatMap(({ path, to }) => (path === 'cylinder.ringOrifice' ? [to] : [])),
      );
    expect(Math.max(...leaks(3))).toBeLessThan(Math.min(...leaks(0)));
  });
});
