import { type BufferGeometry, Shape } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Dims } from '../form/dims.ts';
import { extrude } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** A cam outline of base, two flanks and nose; angle 0 (the nose) at the top, rad and m. */
export function camRadius(def: SetDefinition, angle: number): { lift: number; slope: number } {
  const { baseRadius: r0, noseRadius: rn, lift, flankAngle: alpha } = def.cam;
  const D = lift + r0 - rn;
  const c = Math.cos(alpha);
  const R = (r0 * r0 + D * D - 2 * r0 * D * c - rn * rn) / (2 * (r0 - rn - D * c));
  const phi = Math.asin((D * Math.sin(alpha)) / (R - rn));
  const t = Math.abs(angle);
  const sign = angle < 0 ? 1 : -1;
  if (t >= alpha) return { lift: 0, slope: 0 };
  if (alpha - t < phi)
    return { lift: (R - r0) * (1 - Math.cos(alpha - t)), slope: sign * (R - r0) * Math.sin(alpha - t) };
  return { lift: D * Math.cos(t) + rn - r0, slope: -D * Math.sin(angle) };
}

/**
 * The camshaft along x with its lobe, nose up at no turn.
 *
 * The lobe is the envelope of the flat follower at every angle, so it is cut by the same lift that the model uses.
 */
export function camshaftForm(
  def: SetDefinition,
  d: Dims,
  halfLength: number,
  lobeAt: number,
): BufferGeometry {
  const shape = new Shape();
  const steps = 120;
  for (let i = 0; i < steps; i++) {
    // While the cam stands at `angle`, the follower above touches it at height r0 + lift, lift' to the side.
    const angle = -Math.PI + (2 * Math.PI * i) / steps;
    const { lift, slope } = camRadius(def, angle);
    const height = def.cam.baseRadius + lift;
    const x = height * Math.sin(angle) + slope * Math.cos(angle);
    const y = height * Math.cos(angle) - slope * Math.sin(angle);
    if (i === 0) shape.moveTo(x, y);
    else shape.lineTo(x, y);
  }
  shape.closePath();
  const lobe = extrude(shape, d('lobeWidth'), 0.4e-3, 1)
    .translate(0, 0, -d('lobeWidth') / 2)
    .rotateY(Math.PI / 2)
    .translate(lobeAt, 0, 0);
  const r = d('radius');
  const shaft = revolve(
    [
      [0, -halfLength],
      [r, -halfLength],
      [r, halfLength],
      [0, halfLength],
    ],
    { segments: 18 },
  ).rotateZ(-Math.PI / 2);
  return joined([painted(lobe, 'lappedSteel'), painted(shaft, 'groundSteel')]);
}
