/** A unit to show values in: shown value = SI value / size. */
export interface Scale {
  size: number;
  unit: string;
}

/** Larger and smaller units of the SI ones, greatest first; the first that is not above the value is used. */
const families: Readonly<Record<string, readonly [number, string][]>> = {
  Pa: [
    [1e9, 'GPa'],
    [1e6, 'MPa'],
    [1e3, 'kPa'],
    [1, 'Pa'],
  ],
  'Pa s': [
    [1, 'Pa·s'],
    [1e-3, 'mPa·s'],
  ],
  N: [
    [1e4, 'kN'],
    [1, 'N'],
  ],
  m: [
    [0.5, 'm'],
    [1e-4, 'mm'],
    [1e-6, 'µm'],
  ],
  'm^2': [
    [1e-2, 'm²'],
    [1e-6, 'mm²'],
  ],
  'm^3': [
    [1e-2, 'm³'],
    [1e-6, 'cm³'],
    [1e-9, 'mm³'],
  ],
  'm^3/s': [
    [1e-2, 'm³/s'],
    [1e-6, 'cm³/s'],
    [1e-9, 'mm³/s'],
  ],
  'm^2/s': [[0, 'mm²/s']],
  s: [
    [0.1, 's'],
    [1e-3, 'ms'],
    [1e-6, 'µs'],
  ],
};

const sizes: Readonly<Record<string, number>> = {
  GPa: 1e9,
  MPa: 1e6,
  kPa: 1e3,
  mPa·s: 1e-3,
  kN: 1e3,
  mm: 1e-3,
  µm: 1e-6,
  'mm²': 1e-6,
  'cm³': 1e-6,
  'mm³': 1e-9,
  'cm³/s': 1e-6,
  'mm³/s': 1e-9,
  'mm²/s': 1e-6,
  ms: 1e-3,
  µs: 1e-6,
};

/** A unit as it is printed; nothing for a pure number. */
export const plain = (unit: string): string =>
  unit === '1' ? '' : unit.replaceAll('^2', '²').replaceAll('^3', '³').replaceAll(' ', '·');

/** The unit in which an SI value of this greatest size reads best. */
export function scaleFor(unit: string, greatest: number): Scale {
  const family = families[unit];
  if (family === undefined) return { size: 1, unit: plain(unit) };
  if (greatest === 0) return { size: 1, unit: plain(unit) };
  const chosen = family.find(([least]) => Math.abs(greatest) >= least) ?? family.at(-1);
  const name = chosen?.[1] ?? plain(unit);
  return { size: sizes[name] ?? 1, unit: name };
}

const raised = (exponent: number): string =>
  [...`${exponent}`].map((sign) => (sign === '-' ? '⁻' : ('⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(sign)] ?? ''))).join('');

/** A bare figure of so many significant digits, with a real minus sign; powers of ten beyond 10⁻⁴ .. 10⁶. */
export function bare(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return 'none';
  if (value === 0) return '0';
  const size = Math.abs(value);
  const sign = value < 0 ? '\u2212' : '';
  if (size >= 1e6 || size < 1e-4) {
    const [mantissa = '', exponent = '0'] = size.toExponential(digits - 1).split('e');
    return `${sign}${Number(mantissa)}\u202f×\u202f10${raised(Number(exponent))}`;
  }
  return `${sign}${Number(size.toPrecision(digits))}`;
}

/** A figure in a scale, with its unit. */
export function inScale(value: number, { size, unit }: Scale, digits = 4): string {
  const text = bare(value / size, digits);
  return unit === '' ? text : `${text}\u202f${unit}`;
}

/** A figure in the unit that suits it by itself. */
export const shown = (value: number, unit: string, digits = 4): string =>
  inScale(value, scaleFor(unit, value), digits);

/** A camelCase name as words. */
export const asWords = (name: string): string =>
  name
    .replace(/([a-z])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`)
    .replace(/([a-z])(\d)/g, '$1 $2');
