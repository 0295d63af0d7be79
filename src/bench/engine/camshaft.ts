import { type BufferGeometry, Shape } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { type Dims, mm } from '../form/dims.ts';
import { extrude } from '../form/extrude.ts';
import type { Corner } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** Where journals, gear and shaft's ends stand along the camshaft, m; x from the middle of the cam chamber. */
export const camshaftPlaces = {
  journal: 16 * mm,
  end: 3.5 * mm,
  gear: -57 * mm,
  gearWidth: 9 * mm,
  gearRadius: 22.5 * mm,
} as const;

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
 * The camshaft along x with its lobe, nose up at no turn: journals at both ends, waisted between, a gear at the left.
 *
 * The lobe is the envelope of the flat follower at every angle, so it is cut by the same lift that the model uses.
 */
export function camshaftForm(
  def: SetDefinition,
  d: Dims,
  halfLength: number,
  lobeAt: number,
): BufferGeometry {
  const width = d('lobeWidth');
  const lobe = alongShaft(extrude(lobeShape(def), width, 0.7 * mm, 1), width).translate(lobeAt, 0, 0);
  const { gear, gearWidth } = camshaftPlaces;
  const wheel = alongShaft(extrude(gearShape(), gearWidth, 0.5 * mm, 1), gearWidth).translate(gear, 0, 0);
  const shaft = revolve(shaftSide(d('radius'), halfLength, lobeAt, width), { segments: 26 }).rotateZ(
    -Math.PI / 2,
  );
  return joined([
    painted(lobe, 'lappedSteel'),
    painted(wheel, 'machinedIron'),
    painted(shaft, 'groundSteel', 0.8),
  ]);
}

/** An extrusion drawn in x, y turned so that it lies across the shaft, centred. */
function alongShaft(geometry: BufferGeometry, width: number): BufferGeometry {
  return geometry.translate(0, 0, -width / 2).rotateY(Math.PI / 2);
}

function lobeShape(def: SetDefinition): Shape {
  const shape = new Shape();
  const steps = 96;
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
  return shape;
}

/** Straight-flanked teeth: enough to be seen for a gear. */
function gearShape(): Shape {
  const teeth = 30;
  const tip = camshaftPlaces.gearRadius;
  const root = tip - 3.2 * mm;
  const shape = new Shape();
  for (let i = 0; i < teeth * 4; i++) {
    const share = [0.06, 0.2, 0.42, 0.56][i % 4] ?? 0;
    const a = ((Math.floor(i / 4) + share) / teeth) * Math.PI * 2;
    const r = i % 4 === 1 || i % 4 === 2 ? tip : root;
    if (i === 0) shape.moveTo(r * Math.cos(a), r * Math.sin(a));
    else shape.lineTo(r * Math.cos(a), r * Math.sin(a));
  }
  shape.closePath();
  return shape;
}

function shaftSide(radius: number, half: number, lobeAt: number, lobe: number): Corner[] {
  const { journal, end, gear, gearWidth } = camshaftPlaces;
  const waist = radius * 0.66;
  const shoulder = radius * 1.3;
  const inner = half - journal;
  const collar = lobe / 2 + 2.5 * mm;
  const hub = gearWidth / 2 + 3 * mm;
  const step = (from: number, to: number, r: number): Corner[] => [
    [waist, from],
    [r, from],
    [r, to],
    [waist, to],
  ];
  return [
    [0, -half + end],
    [radius, -half + end],
    [radius, -inner],
    [shoulder, -inner],
    [shoulder, -inner + 2.5 * mm],
    ...step(gear - hub, gear + hub, radius * 1.1),
    ...step(lobeAt - collar, lobeAt + collar, radius * 1.08),
    [waist, inner - 2.5 * mm],
    [shoulder, inner - 2.5 * mm],
    [shoulder, inner],
    [radius, inner],
    [radius, half - end],
    [0, half - end],
  ];
}
