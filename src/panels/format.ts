/** Narrow no-break space between a figure and its unit. */
const gap = '\u202f';

/** A figure with a real minus sign, never "−0". digits: decimals shown. */
export function figure(value: number, digits = 0): string {
  const text = Math.abs(value).toFixed(digits);
  const isZero = Number(text) === 0;
  return value < 0 && !isZero ? `\u2212${text}` : text;
}

/** A figure and its unit, kept on one line. */
export const quantity = (value: number, unit: string, digits = 0): string =>
  `${figure(value, digits)}${gap}${unit}`;

/** Lengths given in m, shown in mm. */
export const inMm = (metres: number, digits = 1): string => quantity(metres * 1e3, 'mm', digits);
/** Volumes given in m3, shown in mm³, or in mL from 1 mL up. */
export const inMm3 = (cubicMetres: number): string =>
  cubicMetres >= 1e-6 ? quantity(cubicMetres * 1e6, 'mL', 1) : quantity(cubicMetres * 1e9, 'mm³', 0);
/** Forces in N, whole newtons, kN from 2 kN up. */
export const inNewton = (newton: number): string =>
  Math.abs(newton) >= 2000 ? quantity(newton / 1000, 'kN', 1) : quantity(newton, 'N', 0);
export const inNewtonMetre = (torque: number): string => quantity(torque, 'N·m', torque < 10 ? 1 : 0);
/** Angles given in rad, shown in whole degrees. */
export const inDegrees = (radians: number): string => `${figure((radians * 180) / Math.PI)}°`;
/** Speeds given in rad/s, shown in r/min. */
export const inTurnsAMinute = (omega: number): string => quantity((omega * 30) / Math.PI, 'r/min', 0);

/** A span of working time given in s: "40 s", "12 min", "2 h 5 min". */
export function inTime(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 90) return quantity(whole, 's');
  const minutes = Math.round(whole / 60);
  if (minutes < 60) return quantity(minutes, 'min');
  const hours = Math.floor(minutes / 60);
  return minutes % 60 === 0
    ? quantity(hours, 'h')
    : `${quantity(hours, 'h')} ${quantity(minutes % 60, 'min')}`;
}

/** "one" of something or "many" of it, with the count. */
export const countOf = (count: number, one: string, many: string): string =>
  `${figure(count)} ${count === 1 ? one : many}`;

/** First letter made a capital. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
