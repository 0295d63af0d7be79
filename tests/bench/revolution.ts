import { SUBSTEPS, turnCrank } from '../../src/sim/set/crank.ts';
import { copyState } from '../../src/sim/set/snapshot.ts';
import { type SimState, STEP } from '../../src/sim/set/state.ts';
import { sealedOf } from '../reference/crankOde.ts';
import { beforeRevolution, modelRevolution, unfired } from '../reference/modelRun.ts';
import { revolve } from '../reference/revolutionOde.ts';
import type { Result } from './result.ts';
import { curveLines, type Rung, timeAtError, timed } from './timing.ts';

/*
 * One crank revolution, bottom to bottom over compression, with its stroke of the pump. Error: the largest
 * relative one among speed at the end, time to the end, pressure at the top and fuel delivered, on the mean of
 * four first speeds, against odex at 1e-10.
 */

const SPEEDS = [53.3, 54.1, 55.7, 57.2];
const OWN_LADDER = [SUBSTEPS / 5, SUBSTEPS, SUBSTEPS * 4, SUBSTEPS * 16];
const ODEX_LADDER = [1e-1, 1e-2, 1e-3, 1e-4, 1e-6, 1e-8];

interface Ends {
  readonly omega: number;
  readonly time: number;
  readonly pressureAtTop: number;
  readonly injected: number;
  readonly line: number;
}

const meanOf = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;

/** Largest of the mean relative errors of a set of revolutions. */
function errorOf(starts: readonly SimState[], found: readonly Ends[], exact: readonly Ends[]): number {
  const delivered = (ends: Ends, i: number) => ends.injected + ends.line - (starts[i]?.line.liquid ?? 0);
  const measures = [
    (ends: Ends) => ends.omega,
    (ends: Ends) => ends.time,
    (ends: Ends) => ends.pressureAtTop,
    delivered,
  ];
  const apart = (of: (ends: Ends, i: number) => number) =>
    meanOf(exact.map((ends, i) => Math.abs(of(found[i] ?? ends, i) / of(ends, i) - 1)));
  return Math.max(...measures.map(apart));
}

/** Our revolution against odex on the same equations. */
export function revolutionBench(): Result {
  const starts = SPEEDS.map(beforeRevolution);
  const sealed = starts.map((start) => sealedOf(unfired, start));
  const exact = starts.map((start, i) =>
    revolve(sealed[i] ?? sealedOf(unfired, start), start, { relative: 1e-10 }),
  );
  const own: Rung[] = OWN_LADDER.map((perStep) => {
    const error = errorOf(
      starts,
      starts.map((start) => modelRevolution(start, perStep)),
      exact,
    );
    const work = () => {
      for (const [i, start] of starts.entries()) {
        const state = copyState(start);
        const steps = Math.ceil((exact[i]?.time ?? 0) / STEP);
        for (let n = 0; n < steps; n += 1) turnCrank(unfired, state, [], perStep, null, perStep);
      }
    };
    return { setting: `${perStep} sub-steps`, error, seconds: timed(work).wall / starts.length };
  });
  const odex: Rung[] = ODEX_LADDER.map((relative) => {
    const turn = () =>
      starts.map((start, i) => revolve(sealed[i] ?? sealedOf(unfired, start), start, { relative }));
    const error = errorOf(starts, turn(), exact);
    return { setting: `at ${relative}`, error, seconds: timed(turn, 25).wall / starts.length };
  });
  const mine = own.find(({ setting }) => setting === `${SUBSTEPS} sub-steps`);
  if (mine === undefined) throw new Error('the model is not on its own ladder');
  const theirs = timeAtError(odex, mine.error);
  return {
    title: `crank revolution against odex, at the model's error of ${mine.error.toExponential(1)}`,
    value: theirs.seconds / mine.seconds,
    unit: 'times as fast',
    target: 5,
    isBound: theirs.isBound,
    lines: [...curveLines('model', own), ...curveLines('odex', odex)],
  };
}
