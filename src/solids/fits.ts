/** How two parts of the assembled pump meet: overlap allowed, m3, and greatest gap, m, both as drawn; and why. */
export type Fit = {
  readonly parts: readonly [string, string];
  readonly overlap?: number;
  readonly gap?: number;
  readonly why: string;
};

/**
 * Overlap that rounding alone can make between faces that touch, m3: a thousandth of a cubic millimetre.
 *
 * Holes are drawn with their chords outside the circle and shafts with theirs inside, so no fit needs more.
 */
export const ROUNDING = 1e-12;

const micro = 1e-6;
/** Faces that bear on one another. */
const TOUCH = 1 * micro;
/** Flanks of a thread, with the play that it is drawn with and its chords. */
const THREAD = 80 * micro;
/** Lapped fits: their clearance of 2 um, and as much again as a chord of the shaft stands back from its circle. */
const LAPPED = 20 * micro;

const touching = (a: string, b: string, why: string): Fit => ({ parts: [a, b], gap: TOUCH, why });
const within = (a: string, b: string, gap: number, why: string): Fit => ({ parts: [a, b], gap, why });

/** Every pair of parts that must meet when the valve is shut. */
export const fits: readonly Fit[] = [
  within('plunger', 'barrel', LAPPED, 'lapped'),
  within('valve', 'valveSeat', LAPPED, 'lapped: guide, collar and cone'),
  within('cup', 'pumpBody', 110 * micro, 'slides with a running fit'),
  within('cup', 'camshaft', 25 * micro, 'rides on the cam, whose flanks are chords'),
  touching('plunger', 'cup', 'the foot stands on the cup’s floor'),
  touching('springPlate', 'plunger', 'lies on the collar'),
  touching('returnSpring', 'springPlate', 'lower seat'),
  touching('returnSpring', 'pumpBody', 'upper seat'),
  touching('valveSpring', 'valve', 'lower seat'),
  touching('valveSpring', 'holder', 'upper seat'),
  touching('barrel', 'pumpBody', 'its collar rests on the ledge'),
  touching('valveSeat', 'barrel', 'clamped'),
  touching('holder', 'valveSeat', 'clamps'),
  within('holder', 'pumpBody', THREAD, 'screwed in'),
  touching('pin', 'plunger', 'pressed in'),
  within('pin', 'fork', 360 * micro, 'half of what the slot is wider than the pin'),
  within('retainer', 'pumpBody', 60 * micro, 'sprung into its groove'),
  within('inlet', 'pumpBody', 100 * micro, 'screwed in'),
  touching('inlet', 'inletSeal', 'clamps its seal'),
  touching('inletSeal', 'pumpBody', 'seals on the boss'),
  within('bleedScrew', 'pumpBody', THREAD, 'screwed in'),
  touching('bleedScrew', 'bleedSeal', 'clamps its seal'),
  touching('bleedSeal', 'pumpBody', 'seals on the boss'),
  touching('shim', 'pumpBody', 'lies under the flange'),
  touching('flangeWasher', 'pumpBody', 'lies on its spot face'),
  touching('flangeNut', 'flangeWasher', 'clamps'),
  within('flangeNut', 'stud', THREAD, 'screwed on'),
  within('pipeNut', 'holder', THREAD, 'screwed on'),
  within('pipeCone', 'holder', 40 * micro, 'cone in cone'),
  within('pipeNut', 'pipeCone', 40 * micro, 'presses on the cone’s back'),
  touching('windowCover', 'pumpBody', 'lies on the milled frame'),
  touching('coverScrew1', 'windowCover', 'holds the cover'),
  touching('coverScrew2', 'windowCover', 'holds the cover'),
  within('coverScrew1', 'pumpBody', THREAD, 'screwed in'),
  within('coverScrew2', 'pumpBody', THREAD, 'screwed in'),
];

/** How two parts meet by their names, with or without a side or number after them; undefined = not at all. */
export function fitOf(a: string, b: string): Fit | undefined {
  const names = [a, b].map((name) => name.split(' ')[0] ?? name);
  return fits.find(({ parts }) => names.every((name) => parts.includes(name)) && names[0] !== names[1]);
}
