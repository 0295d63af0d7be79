/** Time that a piece of work takes, s: best of several runs, on the clock and of the processor. */
export interface Timed {
  readonly wall: number;
  readonly cpu: number;
}

/** Runs shorter than this are repeated within one measurement, s: short enough to fall between the turns of others. */
const LEAST = 0.008;

/** Best time of `runs` measurements of `work`, after a warm-up; the machine may be shared, so the best counts. */
export function timed(work: () => void, runs = 25): Timed {
  const once = () => {
    const cpu = process.cpuUsage();
    const wall = performance.now();
    work();
    const used = process.cpuUsage(cpu);
    return { wall: (performance.now() - wall) / 1e3, cpu: (used.user + used.system) / 1e6 };
  };
  let repeats = 1;
  for (let i = 0; i < 3; i += 1) repeats = Math.max(1, Math.ceil(LEAST / Math.max(once().wall, 1e-7)));
  let best = { wall: Number.POSITIVE_INFINITY, cpu: Number.POSITIVE_INFINITY };
  for (let run = 0; run < runs; run += 1) {
    const cpu = process.cpuUsage();
    const wall = performance.now();
    for (let i = 0; i < repeats; i += 1) work();
    const used = process.cpuUsage(cpu);
    best = {
      wall: Math.min(best.wall, (performance.now() - wall) / 1e3 / repeats),
      cpu: Math.min(best.cpu, (used.user + used.system) / 1e6 / repeats),
    };
  }
  return best;
}

/** One rung of a work-precision curve: how fine, how wrong, and how long it took (s on the clock). */
export interface Rung {
  readonly setting: string;
  readonly error: number;
  readonly seconds: number;
}

/** Seconds as a short text. */
export function inTime(seconds: number): string {
  if (seconds >= 1) return `${seconds.toFixed(2)} s`;
  return seconds >= 1e-3 ? `${(seconds * 1e3).toFixed(2)} ms` : `${(seconds * 1e6).toFixed(2)} us`;
}

/** A curve as lines. */
export function curveLines(name: string, rungs: readonly Rung[]): string[] {
  return rungs.map(
    ({ setting, error, seconds }) =>
      `  ${name} ${setting}: error ${error.toExponential(1)}, ${inTime(seconds)}`,
  );
}

/**
 * Time that a method needs for an error: its quickest rung that is at least as exact; where none is, its most
 * exact rung stands for it, which says too little for the other side (`isBound`).
 */
export function timeAtError(rungs: readonly Rung[], error: number): { seconds: number; isBound: boolean } {
  const exact = rungs.filter((rung) => rung.error <= error);
  if (exact.length > 0) return { seconds: Math.min(...exact.map(({ seconds }) => seconds)), isBound: false };
  const least = Math.min(...rungs.map((rung) => rung.error));
  const nearest = rungs.find((rung) => rung.error === least);
  return { seconds: nearest?.seconds ?? Number.NaN, isBound: true };
}
