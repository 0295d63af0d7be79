import { bisect } from 'fmin/src/bisect.js';
import { closedLinePressure, closedLineVolume } from '../../src/sim/laws/closedLine.ts';
import type { Result } from './result.ts';
import { inTime, timed } from './timing.ts';

/** Both stop at this share of the pressure. */
const TOLERANCE = 1e-12;
const [V, P0, BULK, N] = [1.8e-6, 1e5, 1.4e9, 1.3];
const HIGHEST = 1e8;

/** Pushes of 2..40 mm3 into lines with 0.5..100 mm3 of air. */
const cases = [0.5, 5, 20, 100].flatMap((air) =>
  Array.from({ length: 20 }, (_, i) => ({ air: air * 1e-9, push: (i + 1) * 2e-9 })),
);

const general = (push: number, air: number) =>
  bisect((p) => closedLineVolume(p, V, air, P0, BULK, N) - push, P0, HIGHEST, {
    maxIterations: 200,
    tolerance: TOLERANCE * P0,
  });
const own = (push: number, air: number) => closedLinePressure(push, V, air, P0, BULK, N);

/** Pressure of a closed line by its own method against a general root finder (bisection of the package fmin). */
export function closedLineBench(): Result {
  const apart = cases.map(({ push, air }) => Math.abs(own(push, air) / general(push, air) - 1));
  const most = Math.max(...apart);
  if (most > 1e-9) throw new Error(`the two disagree by ${most}`);
  // a sum keeps the work from being optimised away
  const run = (method: typeof own) => () => {
    let sum = 0;
    for (const { push, air } of cases) sum += method(push, air);
    if (!(sum > 0)) throw new Error(`sum ${sum}`);
  };
  const mine = timed(run(own)).wall / cases.length;
  const theirs = timed(run(general)).wall / cases.length;
  return {
    title: 'closed-line pressure against a general root finder, equal tolerance',
    value: theirs / mine,
    unit: 'times as fast',
    target: 1,
    lines: [
      `  model ${inTime(mine)}, general ${inTime(theirs)} a pressure; largest difference ${most.toExponential(1)}`,
    ],
  };
}
