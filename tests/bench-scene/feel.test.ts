import { describe, expect, it } from 'vitest';
import { feltWords } from '../../src/bench/handles/feel.ts';
import { nutFeel, torqueWords } from '../../src/bench/handles/nut.ts';
import { sessionWith, takeInHand } from './sound/bench.ts';

/** Holds the plunger 5 mm towards the outlet of where it stands, with a twist, for a while. */
function felt(changes: Parameters<typeof sessionWith>[0], twist: number): string {
  const session = sessionWith(changes);
  takeInHand(session);
  const { travel, turn } = session.sim().pump;
  session.do({ do: 'grasp', part: 'plunger' });
  for (let i = 0; i < 40; i += 1) session.do({ do: 'handTo', travel: travel + 0.005, twist });
  return feltWords(session.sim(), travel, turn);
}

describe('what the fingers feel at the pointer', () => {
  it('is force that moves nothing on a seized plunger, and force with movement on a free one', () => {
    // Common practice, no source. 5 mm of lead on a coupling of 30 kN/m is 150 N, more than the spring's 114 N.
    expect(felt([{ path: 'bond.shear', to: 1.6e6 }], 0)).toBe(
      '150\u2009N towards the outlet: it has not moved',
    );
    expect(felt([], 0)).toMatch(/towards the outlet: gone \d\.\d\u2009mm$/);
  });

  it('tells a twist that turns it from one that does not', () => {
    expect(felt([{ path: 'bond.shear', to: 1.6e6 }], 0.2)).toMatch(/twisting with 0.20.*it has not moved$/);
    expect(felt([], 0.2)).toMatch(/turned \d+°$/);
  });
});

describe('a nut under the spanner', () => {
  const usual = 25;

  it('does not move until it is pulled as hard as it was tightened, and then comes round with the hand', () => {
    // Common practice, no source: a tight union gives at about the torque that it was tightened with.
    const before = nutFeel(0.4, usual, usual);
    expect(before.at).toBe('still');
    expect(before.torque).toBeGreaterThan(0.8 * usual);
    expect(before.turned).toBeLessThan(0.1);
    expect(nutFeel(0.6, usual, usual)).toMatchObject({ at: 'free', torque: 0, turned: 0.6 });
    expect(nutFeel(3, usual, usual).at).toBe('off');
  });

  it('runs down freely when it is slack, then takes weight and turns less than the hand', () => {
    expect(nutFeel(-0.5, 0, usual)).toEqual({ turned: -0.5, torque: 0, at: 'free' });
    const light = nutFeel(-1, 0, usual);
    const hard = nutFeel(-1.7, 0, usual);
    expect(light.torque).toBeGreaterThan(0);
    expect(hard.torque).toBeGreaterThan(light.torque);
    expect(Math.abs(hard.turned - light.turned)).toBeLessThan(0.7 / 2);
  });

  it('that is tight already gives nothing back: it moves on only beyond what it holds', () => {
    expect(nutFeel(-0.5, usual, usual).at).toBe('still');
    expect(nutFeel(-1.5, usual, usual)).toMatchObject({ at: 'moving' });
    expect(nutFeel(-1.5, usual, usual).torque).toBeGreaterThan(usual);
  });

  it('is told in newton metres by a wrench alone; a spanner tells the pull on its end', () => {
    // Torque is force times arm; 0.15 m from the nut to the middle of the hand.
    expect(torqueWords('torqueWrench', 25)).toBe('25\u2009N·m on the wrench');
    expect(torqueWords('spanner', 30)).toBe('a pull of 200\u2009N at the spanner’s end');
    expect(torqueWords('screwdriver', 2)).not.toMatch(/\d/);
  });
});
