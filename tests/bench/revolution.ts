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
/** Rounds in which both are timed. */
const ROUNDS = 3;
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

/** Time of one turn, s, the starts taken in turn. */
function oneByOne(starts: readonly SimState[], turn: (start: SimState, i: number) => void): number {
  const next = { i: 0 };
  return timed(() => {
    const start = starts[next.i];
    if (start !== undefined) turn(start, next.i);
    next.i = (next.i + 1) % starts.length;
  }).wall;
}

/** Time of one of our revolutions with so many sub-steps in a model step, s; copying the start is counted in. */
function ownSeconds(starts: readonly SimState[], ends: readonly Ends[], perStep: number): number {
  return oneByOne(starts, (start, i) => {
    const state = copyState(start);
    const steps = Math.ceil((ends[i]?.time ?? 0) / STEP);
    for (let n = 0; n < steps; n += 1) turnCrank(unfired, state, [], perStep, null, perStep);
  });
}

/** One setting of a method: how it is told, how wrong it is, and how its time is taken. */
interface Entry {
  readonly setting: string;
  readonly error: number;
  readonly time: () => number;
}

/** Takes every time in each of several rounds and keeps the best: the compiler is not equally lucky every time. */
function inRounds(ladders: readonly (readonly Entry[])[]): Rung[][] {
  const best = ladders.map((ladder) => ladder.map(() => Number.POSITIVE_INFINITY));
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const [l, ladder] of ladders.entries()) {
      const row = best[l] ?? [];
      for (const [i, { time }] of ladder.entries()) row[i] = Math.min(row[i] ?? Number.NaN, time());
    }
  }
  return ladders.map((ladder, l) =>
    ladder.map(({ setting, error }, i) => ({ setting, error, seconds: best[l]?.[i] ?? Number.NaN })),
  );
}

/** Our revolution against odex on the same equations. */
export function revolutionBench(): Result {
  const starts = SPEEDS.map(beforeRevolution);
  const sealed = starts.map((start) => sealedOf(unfired, start));
  const byOdex = (relative: number) => (start: SimState, i: number) =>
    revolve(sealed[i] ?? sealedOf(unfired, start), start, { relative });
  const exact = starts.map(byOdex(1e-10));
  const ownLadder: Entry[] = OWN_LADDER.map((perStep) => {
    const ends = starts.map((start) => modelRevolution(start, perStep));
    const error = errorOf(starts, ends, exact);
    return { setting: `${perStep} sub-steps`, error, time: () => ownSeconds(starts, ends, perStep) };
  });
  const odexLadder: Entry[] = ODEX_LADDER.map((relative) => {
    const error = errorOf(starts, starts.map(byOdex(relative)), exact);
    return { setting: `at ${relative}`, error, time: () => oneByOne(starts, byOdex(relative)) };
  });
  const [own = [], odex = []] = inRounds([ownLadder, odexLadder]);
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
