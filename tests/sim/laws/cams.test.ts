import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type ArcCam,
  arcCam,
  arcCamAngleAtLift,
  arcCamCurve,
  arcCamIsSound,
  arcCamLift,
  arcCamSlope,
} from '../../../src/sim/laws/arcCam.ts';
import { camRise, camRiseNames, camRisePeaks } from '../../../src/sim/laws/camRise.ts';
import { tangentCam, tangentCamPoint } from '../../../src/sim/laws/tangentCam.ts';

const anyArcCam: fc.Arbitrary<ArcCam> = fc
  .record({
    r0: fc.double({ min: 0.008, max: 0.03, noNaN: true }),
    rn: fc.double({ min: 0.001, max: 0.01, noNaN: true }),
    lift: fc.double({ min: 0.002, max: 0.015, noNaN: true }),
    alpha: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
  })
  .map(({ r0, rn, lift, alpha }) => arcCam(r0, rn, lift, alpha))
  .filter((cam) => arcCamIsSound(cam) && cam.R < 1);

const anyAngle = fc.double({ min: -20, max: 20, noNaN: true });

describe('arc cam', () => {
  it('lifts and slopes without a jump where flank meets nose and base circle', () => {
    fc.assert(
      fc.property(anyArcCam, (cam) => {
        for (const join of [cam.alpha - cam.phi, cam.alpha]) {
          for (const side of [-1, 1]) {
            const before = side * (join - 1e-10);
            const after = side * (join + 1e-10);
            expect(Math.abs(arcCamLift(cam, before) - arcCamLift(cam, after))).toBeLessThan(1e-9);
            expect(Math.abs(arcCamSlope(cam, before) - arcCamSlope(cam, after))).toBeLessThan(1e-9);
          }
        }
      }),
    );
  });

  it('touches the flat tappet with base radius, flank radius or nose radius, and no other', () => {
    fc.assert(
      fc.property(anyArcCam, anyAngle, (cam, theta) => {
        const radius = cam.r0 + arcCamLift(cam, theta) + arcCamCurve(cam, theta);
        const nearest = Math.min(...[cam.r0, cam.R, cam.rn].map((r) => Math.abs(radius - r) / r));
        expect(nearest).toBeLessThan(1e-8);
      }),
    );
  });

  it('is the same after a turn, symmetric about the nose, and between nothing and full lift', () => {
    fc.assert(
      fc.property(anyArcCam, anyAngle, (cam, theta) => {
        const s = arcCamLift(cam, theta);
        expect(s).toBeGreaterThanOrEqual(0);
        expect(s).toBeLessThanOrEqual(cam.lift * (1 + 1e-12));
        expect(arcCamLift(cam, theta + 2 * Math.PI)).toBeCloseTo(s, 12);
        expect(arcCamLift(cam, -theta)).toBe(s);
        expect(arcCamSlope(cam, -theta)).toBeCloseTo(-arcCamSlope(cam, theta), 12);
      }),
    );
  });

  it('slopes as its lift changes', () => {
    const cam = arcCam(0.014, 0.004, 0.007, Math.PI / 3);
    for (let theta = -1.04; theta < 1.04; theta += 0.0137) {
      const h = 1e-6;
      const slope = (arcCamLift(cam, theta + h) - arcCamLift(cam, theta - h)) / (2 * h);
      expect(Math.abs(slope - arcCamSlope(cam, theta))).toBeLessThan(1e-7);
    }
  });

  it('finds the angle of any lift on the rising side', () => {
    fc.assert(
      fc.property(anyArcCam, fc.double({ min: 0, max: 1, noNaN: true }), (cam, share) => {
        const theta = arcCamAngleAtLift(cam, share * cam.lift);
        expect(theta).toBeLessThanOrEqual(0);
        expect(Math.abs(arcCamLift(cam, theta) - share * cam.lift)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe('tangent cam', () => {
  it('lifts and slopes without a jump at its joins and reaches its lift', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.03, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.002, max: 0.015, noNaN: true }),
        fc.double({ min: 0.004, max: 0.02, noNaN: true }),
        (r0, noseShare, lift, roller) => {
          const cam = tangentCam(r0, r0 * noseShare, lift, roller);
          for (const join of [cam.alpha - cam.phi, cam.alpha]) {
            const before = tangentCamPoint(cam, join - 1e-10);
            const after = tangentCamPoint(cam, join + 1e-10);
            expect(Math.abs(before.s - after.s)).toBeLessThan(1e-9);
            expect(Math.abs(before.ds - after.ds)).toBeLessThan(1e-8);
          }
          expect(tangentCamPoint(cam, 0).s).toBeCloseTo(lift, 12);
        },
      ),
    );
  });
});

describe('rise laws', () => {
  it.each(camRiseNames.map((name) => ({ name })))(
    '$name rises from 0 to 1 and its derivatives agree',
    ({ name }) => {
      expect(camRise(name, 0).s).toBe(0);
      expect(camRise(name, 1).s).toBe(1);
      expect(camRise(name, 0.5).s).toBeCloseTo(0.5, 14);
      const peaks = camRisePeaks(name);
      const n = 500;
      for (let i = 0; i < n; i += 1) {
        const a = camRise(name, i / n);
        const b = camRise(name, (i + 1) / n);
        expect(b.s).toBeGreaterThanOrEqual(a.s);
        expect(Math.abs((b.s - a.s) * n - (a.v + b.v) / 2)).toBeLessThan(1e-4);
        expect(Math.abs((b.v - a.v) * n - (a.a + b.a) / 2)).toBeLessThan(0.05);
        expect(Math.abs(a.v)).toBeLessThanOrEqual(peaks.v * (1 + 1e-12));
        expect(Math.abs(a.a)).toBeLessThanOrEqual(peaks.a * (1 + 1e-12));
        expect(Math.abs(a.j)).toBeLessThanOrEqual(peaks.j * (1 + 1e-12));
      }
    },
  );

  it('would need a base circle of over 30 mm under a flat tappet with a 3-4-5 rise of 7 mm in 60 degrees', () => {
    // Why injection cams are made of arcs. Derived.
    const beta = Math.PI / 3;
    let least = 0;
    for (let i = 0; i <= 10_000; i += 1) {
      const { s, a } = camRise('3-4-5', i / 10_000);
      least = Math.min(least, 7 * s + (7 / (beta * beta)) * a);
    }
    expect(least).toBeCloseTo(-30.34, 2);
  });
});
