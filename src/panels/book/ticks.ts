/** An axis that begins and ends on a round value, with the round values to be written on it. */
export interface RoundAxis {
  from: number;
  to: number;
  ticks: number[];
  /** Decimals that tell neighbouring ticks apart. */
  decimals: number;
}

/** A linear axis of four to seven round ticks (1, 2 or 5 times a power of ten) that holds both values. */
export function roundAxis(least: number, greatest: number): RoundAxis {
  let low = least;
  let high = greatest;
  if (!(high - low > 1e-9 * Math.max(Math.abs(low), Math.abs(high)))) {
    // A level line still needs an axis to stand on.
    const room = low === 0 ? 1 : Math.abs(low) / 2;
    low -= room;
    high += room;
  }
  const rough = (high - low) / 5;
  const exponent = Math.floor(Math.log10(rough));
  const power = 10 ** exponent;
  const times = [1, 2, 5, 10].find((size) => size * power >= rough) ?? 10;
  const step = times * power;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  const decimals = Math.max(0, -(times === 10 ? exponent + 1 : exponent));
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
  return { from: first * step, to: last * step, ticks, decimals };
}
