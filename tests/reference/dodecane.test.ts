import { describe, expect, it } from 'vitest';
import {
  bulkAtPressure,
  dynamicViscosity,
  isentropicBulk,
  pressureLinear,
  pressureStiffening,
  waltherThrough,
} from '../../src/sim/laws/fuelProperties.ts';

/*
 * n-Dodecane, a pure liquid near diesel fuel, from the open reference library CoolProp (equation of state of
 * Lemmon and Huber, Energy & Fuels 18, 960 (2004); the citation from memory): values computed with the library.
 * K, Pa, kg/m3, m/s, Pa s.
 */
const cool = { t: 293.15, p: 101325, rho: 749.44, c: 1301.2, mu: 1.4885e-3, ks: 1.2688e9, kt: 1.0389e9 };
const warm = { t: 313.15, p: 101325, rho: 734.64, c: 1221.9, mu: 1.061e-3, ks: 1.0968e9, kt: 0.9073e9 };
const pressed = { t: 313.15, p: 20e6, rho: 749.19, c: 1341.1, mu: 1.3379e-3, ks: 1.3474e9, kt: 1.1269e9 };

const apart = (found: number, expected: number) => Math.abs(found / expected - 1);

describe('the laws of a liquid on n-dodecane', () => {
  it.each([cool, warm, pressed])(
    'give the isentropic modulus from density and sound at $t K, $p Pa',
    (at) => {
      expect(apart(isentropicBulk(at.rho, at.c), at.ks)).toBeLessThan(1e-3);
    },
  );

  it('keep the isentropic and the isothermal modulus apart, by about 1.2', () => {
    for (const at of [cool, warm, pressed]) {
      expect(isentropicBulk(at.rho, at.c) / at.kt).toBeGreaterThan(1.19);
      expect(isentropicBulk(at.rho, at.c) / at.kt).toBeLessThan(1.23);
    }
  });

  it('let the modulus grow with pressure by 12.5 a pascal, isentropic', () => {
    const rise = (pressed.ks - warm.ks) / (pressed.p - warm.p);
    expect(rise).toBeCloseTo(12.5, 0);
    expect(apart(bulkAtPressure(warm.ks, 12.5, pressed.p - warm.p), pressed.ks)).toBeLessThan(2e-3);
  });

  it('give the pressure of the pressed liquid from how far it was pressed together', () => {
    const strain = 1 - warm.rho / pressed.rho;
    const rise = (pressed.kt - warm.kt) / (pressed.p - warm.p);
    const stiffening = pressureStiffening(warm.kt, rise, strain);
    expect(apart(stiffening, pressed.p - warm.p)).toBeLessThan(5e-3);
    // a constant modulus falls short of it by a tenth or so: the error of the simplest form at 20 MPa
    const constant = pressureLinear(warm.kt, strain);
    expect(constant / (pressed.p - warm.p)).toBeGreaterThan(0.85);
    expect(constant / (pressed.p - warm.p)).toBeLessThan(0.95);
  });

  it('put a line through two viscosities that gives them back', () => {
    const line = waltherThrough(cool.mu / cool.rho, cool.t, warm.mu / warm.rho, warm.t);
    // D1250 is for fuels of 787.5 kg/m3 and more, so only the ratio of viscosities is asked for
    const ratio = dynamicViscosity(line, 830, cool.t) / dynamicViscosity(line, 830, warm.t);
    expect(apart(ratio, cool.mu / warm.mu)).toBeLessThan(0.01);
  });
});
