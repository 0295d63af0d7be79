/** What two parts of the assembled pump may overlap by as drawn, m3, and why. */
export type Fit = {
  readonly parts: readonly [string, string];
  readonly overlap: number;
  readonly why: string;
};

/**
 * Overlap that rounding alone can make between faces that touch, m3: a thousandth of a cubic millimetre.
 *
 * Holes are drawn with their chords outside the circle and shafts with theirs inside, so no fit needs more.
 */
export const ROUNDING = 1e-12;

/** Pairs that need more. */
export const fits: readonly Fit[] = [];

/** Overlap allowed between two parts, by their names with or without a side or number after it, m3. */
export function fitOf(a: string, b: string): number {
  const names = [a, b].map((name) => name.split(' ')[0] ?? name).sort();
  const found = fits.find(({ parts }) => [...parts].sort().join() === names.join());
  return found?.overlap ?? ROUNDING;
}
