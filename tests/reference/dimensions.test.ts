import Qty from 'js-quantities';
import { describe, expect, it } from 'vitest';
import checksFile from '../../models/bench-set/checks.json';
import { findLaw, type Law, laws } from '../../src/sim/laws/registry.ts';

/*
 * Every law is asked again with metre, kilogram, second and kelvin replaced by other units. A law in which only
 * quantities stand gives the same answer in the new units; one with a number in it that has a dimension of its
 * own does not. What a unit is made of is told by the unit library js-quantities 1.8.
 */

type Base = 'metre' | 'kilogram' | 'second' | 'kelvin';

const inLibrary: Readonly<Record<string, Base>> = {
  '<meter>': 'metre',
  '<kilogram>': 'kilogram',
  '<second>': 'second',
  '<kelvin>': 'kelvin',
};

/** Sizes of the new units in the old ones. */
const units: Readonly<Record<Base, number>> = { metre: 1.7, kilogram: 0.6, second: 1.3, kelvin: 0.8 };

/** What a number in this unit is to be divided by when the base units named take their new sizes. */
function factorOf(unit: string, changed: readonly Base[]): number {
  if (unit === '1' || unit === 'rad') return 1;
  // the library's name for a difference of one kelvin is degK; an angle has no dimension
  const known = unit.replace('rad/', '1/').replaceAll(' ', '*').replace(/\bK\b/, 'degK');
  const base = Qty(1, known).toBase();
  const size = (names: readonly string[]) =>
    names.reduce((product, name) => {
      if (name === '<1>' || name === '<radian>') return product;
      const one = inLibrary[name];
      if (one === undefined) throw new Error(`${unit} holds ${name}, which is no base unit of this test`);
      return changed.includes(one) ? product * units[one] : product;
    }, 1);
  return size(base.numerator) / size(base.denominator);
}

const every: readonly Base[] = ['metre', 'kilogram', 'second', 'kelvin'];

/** Laws with a number of its own dimension in them: which base units may still be changed, how well, and why. */
const exceptions: Readonly<Record<string, { readonly free: readonly Base[]; readonly why: string }>> = {
  'density-at': {
    free: [],
    why: 'ASTM D1250: its constant is in (kg/m3)^2/K, and it counts from 15 degrees Celsius',
  },
  'viscosity-at': {
    free: [],
    why: 'ASTM D341: the logarithm is of mm2/s and of K, and the density is that of D1250',
  },
  'ignition-delay': {
    free: [],
    why: 'correlations fitted to ms, bar or atm, and K',
  },
  strike: {
    free: ['kilogram'],
    why: 'stepped in microseconds and followed until the shaking is weaker than 9.81 m/s2',
  },
};

/** Inputs of the published checks of a law: points in range that somebody thought worth checking. */
function pointsOf(law: Law): Record<string, number>[] {
  return checksFile.checks
    .filter((check) => check.law === law.id)
    .map((check) => {
      const point: Record<string, number> = {};
      for (const [name, value] of Object.entries(check.inputs)) {
        if (typeof value === 'number') point[name] = value;
      }
      return point;
    });
}

function inUnits(law: Law, point: Readonly<Record<string, number>>, changed: readonly Base[]) {
  const scaled: Record<string, number> = {};
  for (const { name, unit } of law.inputs) scaled[name] = (point[name] ?? 0) / factorOf(unit, changed);
  return law.run(scaled);
}

/** Outputs that come out differently in other units, with how far they are off. */
function misfits(law: Law, point: Readonly<Record<string, number>>, changed: readonly Base[]): string[] {
  const plain = law.run(point);
  const other = inUnits(law, point, changed);
  return law.outputs.flatMap(({ name, unit }) => {
    const expected = (plain[name] ?? Number.NaN) / factorOf(unit, changed);
    const found = other[name] ?? Number.NaN;
    const size = Math.max(Math.abs(expected), 1e-300);
    const same = expected === found || Math.abs(found - expected) <= 1e-8 * size;
    return same ? [] : [`${law.id} ${name} [${unit}]: expected ${expected}, found ${found}`];
  });
}

describe('the dimensions of the laws', () => {
  it('are told by a unit library that knows what a pascal is made of', () => {
    expect(factorOf('Pa', every)).toBeCloseTo(0.6 / (1.7 * 1.3 * 1.3), 12);
    expect(factorOf('N m', every)).toBeCloseTo(factorOf('J', every), 12);
    expect(factorOf('kg/m^3', ['metre'])).toBeCloseTo(1 / 1.7 ** 3, 12);
    expect(factorOf('rad/s', every)).toBeCloseTo(1 / 1.3, 12);
  });

  it('can be tested: every law has published or derived points to be asked at', () => {
    expect(laws.filter((law) => pointsOf(law).length === 0).map(({ id }) => id)).toEqual([]);
    expect(Object.keys(exceptions).filter((id) => findLaw(id) === undefined)).toEqual([]);
  });

  it.each(laws.map((law) => ({ id: law.id, law })))('$id says the same in other units', ({ law }) => {
    const free = exceptions[law.id]?.free ?? every;
    const wrong = pointsOf(law).flatMap((point) => free.flatMap((base) => misfits(law, point, [base])));
    const all = pointsOf(law).flatMap((point) => misfits(law, point, free));
    expect([...wrong, ...all]).toEqual([]);
  });

  it.each(Object.entries(exceptions).map(([id, { free, why }]) => ({ id, free, why })))(
    '$id cannot in all: $why',
    ({ id, free }) => {
      const law = findLaw(id);
      const bound = every.filter((base) => !free.includes(base));
      const wrong = law ? pointsOf(law).flatMap((point) => misfits(law, point, bound)) : [];
      expect(wrong.length).toBeGreaterThan(0);
    },
  );
});
