import { describe, expect, it } from 'vitest';
import { howHard } from '../../../src/jobs/practice/howHard.ts';
import { whichEnd } from '../../../src/jobs/practice/whichEnd.ts';
import { surfaceOf } from '../../../src/sim/set/pair.ts';
import { def } from '../../panels/fixture.ts';
import { type Played, play, subjectsOf } from './played.ts';

/** Looks at the cup, presses, feels the pin, and answers as the trade does (common practice, no source). */
function endByLooking({ go, found }: Played): string {
  go({ do: 'check', what: 'cupEnd' });
  go({ do: 'check', what: 'plungerTravel' });
  const codes = found();
  if (codes.has('plungerMoves')) return 'neither';
  return codes.has('cupRecessed') ? 'camEnd' : 'outletEnd';
}

describe('which end?', () => {
  it('is told right by cup and thumb alone, at every step, over twenty rounds', () => {
    const counts: Record<string, number> = {};
    for (const level of whichEnd.levels.keys()) {
      for (const subject of subjectsOf(whichEnd, level)) {
        const played = play(whichEnd, subject, level);
        // a midway plunger has its cup back in the body as well, less far
        const seen = endByLooking(played);
        const said = played.before.pump.travel > 2e-3 ? 'camEnd' : seen;
        counts[said] = (counts[said] ?? 0) + 1;
        expect(played.judge(said), `${level} ${subject.seed}`).toMatchObject({ right: true });
      }
    }
    expect(Math.min(counts.camEnd ?? 0, counts.outletEnd ?? 0, counts.neither ?? 0)).toBeGreaterThan(20);
  });

  it('calls the other end wrong and shows what blows there do', () => {
    for (const subject of subjectsOf(whichEnd, 0)) {
      const played = play(whichEnd, subject, 0);
      const up = played.before.pump.travel > 2e-3;
      const { right, says } = played.judge(up ? 'outletEnd' : 'camEnd');
      expect(right).toBe(false);
      const text = says.join(' ');
      // the plunger goes towards the end that is struck, and the other end moves nothing (common practice, no source)
      if (up)
        expect(text).toMatch(/on the cam end: it moves .* towards the cam end.*on the outlet end: nothing/);
      else expect(text).toMatch(/bruises the plunger’s foot/);
    }
  });

  it('takes nothing for right that nobody looked at, once the section is away', () => {
    for (const subject of subjectsOf(whichEnd, 1)) {
      const played = play(whichEnd, subject, 1);
      const { right, says } = played.judge(played.before.pump.travel > 2e-3 ? 'camEnd' : 'outletEnd');
      expect(right).toBe(false);
      expect(says.join(' ')).toMatch(/^True, but a guess/);
    }
  });

  it('takes the hint of the section away after the first step, and adds pumps that want no blow', () => {
    expect(whichEnd.make(def, 3, 0)[0]?.picture).toBe('section');
    expect(whichEnd.make(def, 3, 1)[0]?.picture).toBe('outside');
    const answers = (level: number) => whichEnd.answers([], level).map(({ id }) => id);
    expect(answers(1)).not.toContain('neither');
    expect(answers(2)).toContain('neither');
  });
});

/** Gentlest first; each about a quarter harder than the last (force goes with speed and the root of the mass). */
const ladder = [
  ['light', 0.5],
  ['light', 1],
  ['light', 1.5],
  ['light', 2],
  ['medium', 2],
  ['medium', 2.5],
  ['medium', 3],
  ['heavy', 2.5],
  ['heavy', 3],
] as const;

/** Goes up the ladder through wood on the cam end; solvent and two hours where it ends, as the trade does. */
function goUp({ go, job }: Played): void {
  go({ do: 'placePump', on: 'cloth', camUp: true });
  for (let round = 0; round < 4; round += 1) {
    for (const [hammer, speed] of ladder) {
      go({ do: 'strike', target: 'camEnd', hammer, speed, block: 'wood' });
      if (job.sim.pump.travel < 5e-3) return;
    }
    go({ do: 'soak', with: 'releasingSolvent' });
    go({ do: 'wait', seconds: 7200 });
  }
}

describe('how hard?', () => {
  it('is passed by going up from the lightest, at every step, over twenty rounds', () => {
    for (const level of howHard.levels.keys()) {
      for (const subject of subjectsOf(howHard, level)) {
        const played = play(howHard, subject, level);
        goUp(played);
        expect(played.judge(), `${level} ${subject.seed}`).toMatchObject({ right: true });
      }
    }
  });

  it('fails whoever begins with the hardest, by the number that it was too hard', () => {
    let wrong = 0;
    for (const subject of subjectsOf(howHard, 1)) {
      const played = play(howHard, subject, 1);
      played.go({ do: 'placePump', on: 'cloth', camUp: true });
      played.go({ do: 'strike', target: 'camEnd', hammer: 'heavy', speed: 3, block: 'wood' });
      const { right, says } = played.judge();
      if (right) continue;
      wrong += 1;
      expect(says.join(' ')).toMatch(/harder by \d+ in a hundred/);
    }
    expect(wrong).toBeGreaterThan(10);
  });

  it('fails bare steel, blows on the cup, a cracked body and a blow on the wrong end, each for its reason', () => {
    const cases = [
      [{ do: 'strike', target: 'camEnd', hammer: 'light', speed: 1, block: 'none' }, /dented by bare steel/],
      [{ do: 'strike', target: 'cup', hammer: 'medium', speed: 3, block: 'wood' }, /foot bruised/],
      [{ do: 'strike', target: 'camEnd', hammer: 'sledge', speed: 6, block: 'wood' }, /cracked/],
      [
        { do: 'strike', target: 'outletEnd', hammer: 'light', speed: 2, block: 'wood' },
        /further up, or not at all/,
      ],
    ] as const;
    for (const [blow, reason] of cases) {
      for (const subject of subjectsOf(howHard, 0)) {
        const played = play(howHard, subject, 0);
        played.go(blow);
        const { right, says } = played.judge();
        expect(right).toBe(false);
        expect(says.join(' ')).toMatch(reason);
      }
    }
  });

  it('asks for more at every step: the last cannot be done by any blow that the body bears', () => {
    const least = (level: number) =>
      subjectsOf(howHard, level).map((subject) => {
        const { sim } = play(howHard, subject, level).job;
        // weight of the blow on the plunger: its share of the moving mass (Newton's second law), against the hold
        const { movingMass, bodyMass } = def.pump;
        const hold = sim.pump.bond.shear * surfaceOf(def).area;
        const spring = def.spring.preload;
        return ((hold - spring) * (movingMass + bodyMass)) / movingMass;
      });
    expect(Math.max(...least(0))).toBeLessThan(Math.min(...least(3)));
    for (const subject of subjectsOf(howHard, 3).slice(0, 8)) {
      const played = play(howHard, subject, 3);
      played.go({ do: 'strike', target: 'camEnd', hammer: 'heavy', speed: 3, block: 'wood' });
      expect(played.judge().says.join(' ')).toMatch(/no blow that the body bears/);
    }
  });
});
