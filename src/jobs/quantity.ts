import { PI } from '../sim/laws/maths.ts';

/** Narrow no-break space, so that a figure and its unit stay together. */
const GAP = '\u202f';

/** A figure with a fixed number of decimals, a real minus sign, and its unit. */
export function quantity(value: number, unit: string, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  const sign = value < 0 && Number(text) !== 0 ? '\u2212' : '';
  return `${sign}${text}${GAP}${unit}`;
}

/** m as mm. */
export const millimetres = (metres: number, digits = 1): string => quantity(metres * 1e3, 'mm', digits);
/** N. */
export const newtons = (force: number): string => quantity(force, 'N', 0);
/** m3 as mm3. */
export const cubicMillimetres = (volume: number): string => quantity(volume * 1e9, 'mm³', 0);
/** m3 as millilitres. */
export const millilitres = (volume: number): string => quantity(volume * 1e6, 'ml', 0);
/** rad/s as revolutions a minute. */
export const revolutions = (omega: number): string => quantity((omega * 30) / PI, 'r/min', 0);
/** rad as degrees. */
export const degrees = (angle: number): string => quantity((angle * 180) / PI, '°', 0).replace(GAP, '');
