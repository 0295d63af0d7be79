import { createRequire } from 'node:module';

/** Derivatives of y at x. */
export type Rates = (x: number, y: readonly number[]) => number[];

/** The part of the library that is used here. */
interface Solver {
  absoluteTolerance: number | number[];
  relativeTolerance: number | number[];
  initialStepSize: number;
  maxSteps: number;
  denseOutput: boolean;
  solve(
    rates: Rates,
    x: number,
    y: number[],
    end: number,
    seen?: (n: number, before: number, now: number, y: number[], dense: Dense) => boolean | undefined,
  ): { y: number[]; xEnd: number; outcome: number; nEval: number };
}
type Dense = (component: number, x: number) => number;

// The package ships its TypeScript beside its JavaScript, and an import would have it checked by our rules.
const load: (name: string) => { Solver: new (dimension: number) => Solver } = createRequire(import.meta.url);
const { Solver } = load('odex');

/** Tolerances for each variable: `relative`, and `absolute` as that share of the variable's own size. */
export interface Accuracy {
  readonly relative: number;
  readonly sizes: readonly number[];
}

/** Where an integration ended. evaluations: calls of the right-hand side. */
export interface Solution {
  readonly x: number;
  readonly y: number[];
  readonly evaluations: number;
}

function solverFor(y: readonly number[], accuracy: Accuracy, span: number): Solver {
  const solver = new Solver(y.length);
  solver.relativeTolerance = accuracy.relative;
  solver.absoluteTolerance = accuracy.sizes.map((size) => size * accuracy.relative);
  solver.initialStepSize = Math.min(1e-4, Math.abs(span) / 4);
  solver.maxSteps = 200_000;
  return solver;
}

/**
 * Integrates by the method of Gragg, Bulirsch and Stoer as the package odex does it (Hairer and Wanner's ODEX).
 * Throws when the solver gives up.
 */
export function integrate(
  rates: Rates,
  x: number,
  y: readonly number[],
  end: number,
  accuracy: Accuracy,
): Solution {
  const result = solverFor(y, accuracy, end - x).solve(rates, x, [...y], end);
  if (result.outcome !== 0) throw new Error(`odex gave up at ${result.xEnd} (outcome ${result.outcome})`);
  return { x: end, y: result.y, evaluations: result.nEval };
}

/**
 * Integrates until `event` (a function of x and y, negative at first) reaches zero, or to `end`; the crossing is
 * found by bisection on the solver's dense output.
 */
export function integrateUntil(
  rates: Rates,
  x: number,
  y: readonly number[],
  end: number,
  accuracy: Accuracy,
  event: (x: number, y: readonly number[]) => number,
): Solution & { readonly reached: boolean } {
  const solver = solverFor(y, accuracy, end - x);
  solver.denseOutput = true;
  let found: { x: number; y: number[] } | null = null;
  const result = solver.solve(rates, x, [...y], end, (n, before, now, at, dense) => {
    if (n === 1 || event(now, at) < 0) return undefined;
    let lo = before;
    let hi = now;
    const state = (where: number) => y.map((_, i) => dense(i, where));
    for (let i = 0; i < 60 && hi - lo > 1e-15 * Math.abs(hi); i += 1) {
      const mid = (lo + hi) / 2;
      if (event(mid, state(mid)) < 0) lo = mid;
      else hi = mid;
    }
    found = { x: hi, y: hi === now ? at : state(hi) };
    return false;
  });
  const stop = found ?? { x: end, y: result.y };
  return { ...stop, evaluations: result.nEval, reached: found !== null };
}
