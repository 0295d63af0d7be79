import type { SimState } from '../../sim/set/state.ts';

/** What was so when the set was last listened to; sounds come from what has changed since. */
export type Heard = {
  readonly theta: number;
  readonly omega: number;
  readonly firings: number;
  readonly travel: number;
  readonly turn: number;
  readonly breaks: number;
  readonly rubbed: number;
  readonly rope: number;
  readonly openings: number;
  readonly spilled: number;
};

/** Keeps what the next listening compares with. */
export function heard(sim: Readonly<SimState>): Heard {
  const { engine, pump, hand, line, supply } = sim;
  return {
    theta: engine.theta,
    omega: engine.omega,
    firings: engine.firings,
    travel: pump.travel,
    turn: pump.turn,
    breaks: hand.grasp?.breaks ?? 0,
    rubbed: hand.grasp?.rubbed ?? 0,
    rope: hand.rope,
    openings: line.openings,
    spilled: supply.spilled,
  };
}
