import { asin, PI } from './maths.ts';

/** A round pin held at its root and pushed at `arm`. */
export interface Pin {
  /** m. */
  readonly diameter: number;
  /** Root to the line of the push, m. */
  readonly arm: number;
  /** Yield stress, Pa; perfectly plastic beyond it. */
  readonly yieldStress: number;
  /** Young's modulus, Pa. */
  readonly modulus: number;
}

/** Bending stress at the root while elastic, Pa: sigma = 32 F L/(pi d^3); force N. */
export function pinStress(pin: Pin, force: number): number {
  return (32 * force * pin.arm) / (PI * pin.diameter * pin.diameter * pin.diameter);
}

/** Push at which the outer fibre yields, N. */
export function pinYieldForce(pin: Pin): number {
  return pin.yieldStress / pinStress(pin, 1);
}

/** Push at which the whole root section yields and the pin folds, N: 16/(3 pi) = 1.70 times first yield. */
export function pinHingeForce(pin: Pin): number {
  return (pinYieldForce(pin) * 16) / (3 * PI);
}

/** Moment borne by a round section of radius 1 at yield stress 1 whose elastic core has half height c (0..1). */
function coreMoment(c: number): number {
  const rest = Math.sqrt(1 - c * c);
  const plastic = (rest * rest * rest) / 3;
  if (c < 1e-9) return 4 * plastic;
  return 4 * (plastic + (asin(c) / 8 - (c * rest * (1 - 2 * c * c)) / 8) / c);
}

/** Core half height at which a section bears a moment between first yield (pi/4) and the hinge (4/3). */
function coreFor(moment: number): number {
  let low = 0;
  let high = 1;
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2;
    if (coreMoment(middle) > moment) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Slope left at the tip after a push below the hinge force, rad: what bending was plastic, summed along the pin. */
function setBelowHinge(pin: Pin, force: number): number {
  const yieldForce = pinYieldForce(pin);
  if (force <= yieldForce) return 0;
  const radius = pin.diameter / 2;
  const yieldCurvature = pin.yieldStress / (pin.modulus * radius);
  const plasticLength = pin.arm * (1 - yieldForce / force);
  const slices = 64;
  let slope = 0;
  for (let i = 0; i < slices; i += 1) {
    const share = (i + 0.5) / slices;
    const ratio = (force / yieldForce) * (1 - (share * plasticLength) / pin.arm);
    slope += yieldCurvature * (1 / coreFor((ratio * PI) / 4) - ratio) * (plasticLength / slices);
  }
  return slope;
}

/**
 * Angle by which a push leaves the pin bent, rad, 0 if it stayed elastic.
 *
 * force N (>= 0); follow = how far the tool follows the tip while the pin gives way, m. Below the hinge force the
 * pin stops by itself and keeps a slight set; at the hinge force nothing but the tool's own travel stops it.
 */
export function pinSet(pin: Pin, force: number, follow: number): number {
  const hinge = pinHingeForce(pin);
  if (force < hinge) return setBelowHinge(pin, force);
  // Within a thousandth of the hinge: as far as the pin resists by itself.
  const slight = setBelowHinge(pin, 0.999 * hinge);
  const inertia = (PI * pin.diameter * pin.diameter * pin.diameter * pin.diameter) / 64;
  const springBack = (hinge * pin.arm * pin.arm * pin.arm) / (3 * pin.modulus * inertia);
  return slight + Math.max(0, follow - springBack) / pin.arm;
}
