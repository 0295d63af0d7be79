import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cylinderVolume, cylinderVolumeSlope } from '../../../src/sim/laws/cylinder.ts';
import { gasOrifice, gasOrificeFlow, orificeMassFlow } from '../../../src/sim/laws/gasFlow.ts';
import {
  assanisDelay,
  hardenbergHaseDelay,
  watsonDelay,
  wolferDelay,
} from '../../../src/sim/laws/ignitionDelay.ts';
import { polytropicPressureRatio, polytropicWork } from '../../../src/sim/laws/polytropic.ts';
import { annandCoefficient } from '../../../src/sim/laws/wallHeat.ts';

const AREA = (Math.PI * 0.08 * 0.08) / 4;
const CLEARANCE = (AREA * 0.066) / 18;

describe('cylinder volume', () => {
  it('has the slope that it reports', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: 12, noNaN: true }),
        fc.double({ min: 1.2, max: 8, noNaN: true }),
        (theta, rodOverCrank) => {
          const h = 1e-5;
          const rod = 0.033 * rodOverCrank;
          const at = (t: number): number => cylinderVolume(t, CLEARANCE, AREA, 0.033, rod);
          const slope = (at(theta + h) - at(theta - h)) / (2 * h);
          expect(Math.abs(slope - cylinderVolumeSlope(theta, AREA, 0.033, rod))).toBeLessThan(1e-12);
        },
      ),
    );
  });

  it('is the clearance at top and the clearance plus the sweep at bottom', () => {
    expect(cylinderVolume(0, CLEARANCE, AREA, 0.033, 0.11)).toBeCloseTo(CLEARANCE, 15);
    expect(cylinderVolume(Math.PI, CLEARANCE, AREA, 0.033, 0.11)).toBeCloseTo(CLEARANCE + AREA * 0.066, 12);
  });
});

describe('gas through a hole', () => {
  it('chokes at the critical ratio of a named library', () => {
    // fluids 1.0.22 (Python): P_critical_flow(P=1e6, k=1.3) and k=1.4, run for this test.
    expect(gasOrifice(1.3, 287).criticalRatio * 1e6).toBeCloseTo(545727.733814065, 3);
    expect(gasOrifice(1.4, 287).criticalRatio * 1e6).toBeCloseTo(528281.7877171742, 3);
  });

  it('gives the textbook choked flow of air', () => {
    // 0.040418 kg sqrt(K)/(N s) for gamma 1.4 and R 287, common gas dynamics figure (from memory).
    const flow = orificeMassFlow(1e-4, 1, 5e5, 300, 1e5, 1.4, 287);
    expect((flow * Math.sqrt(300)) / (5e5 * 1e-4)).toBeCloseTo(0.040418, 5);
  });

  it('never flows uphill, never falls as the far side empties, and has no step anywhere', () => {
    const gas = gasOrifice(1.36, 287);
    const at = (pr: number): number => gasOrificeFlow(gas, 3e-7, 0.8, 3e6, 700, pr * 3e6);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (pr) => {
        const lower = Math.max(0, pr - 1e-6);
        expect(at(pr)).toBeGreaterThanOrEqual(0);
        expect(at(lower)).toBeGreaterThanOrEqual(at(pr) * (1 - 1e-12));
        expect(at(lower) - at(pr)).toBeLessThan(1e-4 * at(0));
      }),
    );
    for (const edge of [gas.criticalRatio, 0.999]) {
      expect(at(edge - 1e-12) / at(edge + 1e-12)).toBeCloseTo(1, 6);
    }
    expect(at(1)).toBe(0);
    expect(at(1.5)).toBe(0);
  });
});

describe('compression', () => {
  it('takes the work that integrating pressure over volume gives', () => {
    const v1 = 331e-6;
    const steps = 20_000;
    let work = 0;
    for (let i = 0; i < steps; i += 1) {
      const v = v1 - ((i + 0.5) / steps) * (v1 - v1 / 17);
      work += (98e3 * polytropicPressureRatio(v1 / v, 1.3) * (v1 - v1 / 17)) / steps;
    }
    expect(polytropicWork(98e3, v1, 17, 1.3) / work).toBeCloseTo(1, 6);
  });

  it('loses more heat to the wall the faster the piston and the denser the charge', () => {
    const h = (speed: number, density: number): number =>
      annandCoefficient(0.08, speed, density, 0.6, 0.7, 0.045, 3.3e-5);
    expect(h(2, 10) / h(1, 10)).toBeCloseTo(2 ** 0.7, 10);
    expect(h(1, 20) / h(1, 10)).toBeCloseTo(2 ** 0.7, 10);
    expect(h(0, 10)).toBe(0);
  });
});

describe('ignition delay', () => {
  it('shortens with pressure and temperature in all four correlations', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.4e6, max: 1e7, noNaN: true }),
        fc.double({ min: 450, max: 1300, noNaN: true }),
        (p, t) => {
          const all = (pp: number, tt: number): number[] => [
            wolferDelay(pp, tt),
            watsonDelay(pp, tt),
            assanisDelay(pp, tt, 0.5),
            hardenbergHaseDelay(pp, tt, 1, 50, 30),
          ];
          const here = all(p, t);
          all(p * 1.01, t).forEach((tau, i) => {
            expect(tau).toBeLessThan(here[i] ?? 0);
          });
          all(p, t * 1.01).forEach((tau, i) => {
            expect(tau).toBeLessThan(here[i] ?? 0);
          });
        },
      ),
    );
  });

  it('is for ever where a correlation says nothing', () => {
    expect(hardenbergHaseDelay(12.4e5, 700, 1, 50, 30)).toBe(Number.POSITIVE_INFINITY);
    expect(hardenbergHaseDelay(5e5, 700, 1, 50, 30)).toBe(Number.POSITIVE_INFINITY);
    expect(hardenbergHaseDelay(4e6, 700, 0, 50, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(wolferDelay(0, 700)).toBe(Number.POSITIVE_INFINITY);
  });
});
