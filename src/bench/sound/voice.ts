import type { SoundId } from './sounds.ts';

/** A damped sine: Hz, 0..1 of full scale at its start, time to 1/e in s. */
export type Ring = { readonly frequency: number; readonly level: number; readonly decay: number };

/** Noise through one band: middle of the band in Hz, its sharpness, 0..1, rise and fall to 1/e in s. */
export type Burst = {
  readonly frequency: number;
  readonly q: number;
  readonly level: number;
  readonly rise: number;
  readonly decay: number;
};

/** One short sound. delay: how long after it is asked for it is heard, s. */
export type Shot = {
  readonly sound: SoundId;
  readonly rings: readonly Ring[];
  readonly bursts: readonly Burst[];
  readonly delay: number;
};

/** A sound that goes on for as long as what makes it: noise through one band, 0..1. */
export type Bed = {
  readonly sound: SoundId;
  readonly frequency: number;
  readonly q: number;
  readonly level: number;
};

type Parts = { rings?: readonly Ring[]; bursts?: readonly Burst[]; delay?: number };

/** A short sound of the given parts; what is left out is empty. */
export function shotOf(sound: SoundId, { rings = [], bursts = [], delay = 0 }: Parts): Shot {
  return { sound, rings, bursts, delay };
}

export const ring = (frequency: number, level: number, decay: number): Ring => ({ frequency, level, decay });
export const burst = (frequency: number, q: number, level: number, decay: number, rise = 0.001): Burst => ({
  frequency,
  q,
  level,
  rise,
  decay,
});

export const clamp = (value: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, value));

/** The loudest part of a sound, 0..1. */
export function loudness(shot: Shot): number {
  return Math.max(0, ...shot.rings.map(({ level }) => level), ...shot.bursts.map(({ level }) => level));
}

/**
 * Middle of a sound's energy over frequency, Hz: the usual measure of brightness.
 *
 * A damped sine holds level^2 decay/4; a noise burst is taken as lying at the middle of its band.
 */
export function centroid(shot: Shot): number {
  let weighted = 0;
  let energy = 0;
  for (const { frequency, level, decay } of [...shot.rings, ...shot.bursts]) {
    const part = level * level * decay;
    weighted += part * frequency;
    energy += part;
  }
  return energy > 0 ? weighted / energy : 0;
}
