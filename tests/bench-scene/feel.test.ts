import { describe, expect, it } from 'vitest';
import { feltWords } from '../../src/bench/handles/feel.ts';
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
