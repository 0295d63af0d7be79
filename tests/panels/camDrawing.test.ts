import { describe, expect, it } from 'vitest';
import { camAxis, camOutline } from '../../src/panels/drawing/camLayout.ts';
import { rulerOf } from '../../src/panels/drawing/layout.ts';
import { arcCam, arcCamLift } from '../../src/sim/laws/arcCam.ts';
import { def } from './fixture.ts';

const mm = rulerOf(def);
const { baseRadius, noseRadius, lift, flankAngle } = def.cam;

/** Arcs of the outline: radius and where each ends, mm, y upwards. */
function arcs() {
  const path = camOutline(def);
  return [...path.matchAll(/A([\d.]+) [\d.]+ 0 [01] 1 (-?[\d.]+) (-?[\d.]+)/g)].map(([, r, x, y]) => ({
    r: Number(r),
    x: Number(x),
    y: -Number(y),
  }));
}

describe('the cam in the section drawing', () => {
  it('is made of flank, nose, flank and base circle with the radii of the model’s cam', () => {
    const { R } = arcCam(baseRadius, noseRadius, lift, flankAngle);
    const drawn = arcs().map(({ r }) => r);
    const model = [R, noseRadius, R, baseRadius].map((r) => r * 1000);
    model.forEach((r, at) => {
      expect(drawn[at]).toBeCloseTo(r, 3);
    });
  });

  it('lifts a flat follower as the model says where nose and flank meet', () => {
    // the normal there goes through the nose's centre: the contact is farthest out in its own direction
    const [left] = arcs();
    if (left === undefined) throw new Error('no arc');
    const D = (lift + baseRadius - noseRadius) * 1000;
    const turn = Math.atan2(left.x, left.y - D);
    const out = left.x * Math.sin(turn) + left.y * Math.cos(turn);
    const cam = arcCam(baseRadius, noseRadius, lift, flankAngle);
    expect(out - baseRadius * 1000).toBeCloseTo(arcCamLift(cam, turn) * 1000, 2);
  });

  it('touches the seated cup with its base circle', () => {
    expect(camAxis(def, mm) + baseRadius * 1000).toBeCloseTo(-mm('cup', 'proud'), 9);
  });
});
