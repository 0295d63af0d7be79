/** Time that a piece of work takes, s: best of several runs, on the clock and of the processor. */
export interface Timed {
  readonly wall: number;
  readonly cpu: number;
}

/** Runs shorter than this are repeated within one measurement, s: short enough to fall between the turns of others. */
const LEAST = 0.002;

/** How long the work is done unmeasured first, s: on a busy machine the compiler is late. */
const WARM_UP = 0.6;

/** Best time of `runs` measurements of `work`, after a warm-up; the machine may be shared, so the best counts. */
export function timed(work: () => void, runs = 200): Timed {
  const measure = (repeats: number): Timed => {
    const cpu = process.cpuUsage();
    const wall = performance.now();
    for (let i = 0; i < repeats; i += 1) work();
    const used = process.cpuUsage(cpu);
    return {
      wall: (performance.now() - wall) / 1e3 / repeats,
      cpu: (used.user + used.system) / 1e6 / repeats,
    };
  };
  let best = measure(1);
  const begun = performance.now();
  while (performance.now() - begun < WARM_UP * 1e3) best = measure(1);
  const repeats = Math.max(1, Math.ceil(LEAST / Math.max(best.wall, 1e-7)));
  for (let run = 0; run < runs; run += 1) {
    const { wall, cpu } = measure(repeats);
    best = { wall: Math.min(best.wall, wall), cpu: Math.min(best.cpu, cpu) };
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
