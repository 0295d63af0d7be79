import { acos, asin, atan2, cos, PI, sin } from './maths.ts';

/** Radial cam of four tangent arcs (base, two flanks, nose) under a flat follower; lengths m, angles rad. */
export type ArcCam = {
  /** Base circle radius. */
  readonly r0: number;
  /** Nose radius. */
  readonly rn: number;
  /** Greatest lift. */
  readonly lift: number;
  /** Angle from the start of a flank to the centre of the nose. */
  readonly alpha: number;
  /** Distance from the camshaft axis to the centre of the nose arc. */
  readonly D: number;
  /** Flank radius. */
  readonly R: number;
  /** Cam angle spent on one flank. */
  readonly phi: number;
};

const TURN = 2 * PI;

/**
 * Completes an arc cam from its four free dimensions.
 *
 * r0, rn, lift in m, alpha in rad. The flank arc is tangent to the base circle at the flank's start and to
 * the nose arc; its radius follows from the triangle of the three centres. Derived.
 */
export function arcCam(r0: number, rn: number, lift: number, alpha: number): ArcCam {
  const D = lift + r0 - rn;
  const c = cos(alpha);
  const R = (r0 * r0 + D * D - 2 * r0 * D * c - rn * rn) / (2 * (r0 - rn - D * c));
  const phi = asin((D * sin(alpha)) / (R - rn));
  return { r0, rn, lift, alpha, D, R, phi };
}

/**
 * Says whether the four dimensions make a convex cam whose flanks meet the nose before its centre.
 *
 * True when the flank radius is larger than base and nose radii and 0 < phi < alpha.
 */
export function arcCamIsSound(cam: ArcCam): boolean {
  return cam.D > 0 && cam.R > cam.r0 && cam.R > cam.rn && cam.phi > 0 && cam.phi < cam.alpha;
}

/** Angle from the centre of the nose in -pi..pi for any cam angle, rad. */
function fromNose(theta: number): number {
  return theta - TURN * Math.round(theta / TURN);
}

/** Follower lift in m at `theta` rad from the centre of the nose (any real angle; zero on the base circle). */
export function arcCamLift(cam: ArcCam, theta: number): number {
  const t = Math.abs(fromNose(theta));
  if (t >= cam.alpha) return 0;
  const onFlank = cam.alpha - t;
  if (onFlank < cam.phi) return (cam.R - cam.r0) * (1 - cos(onFlank));
  return cam.D * cos(t) + cam.rn - cam.r0;
}

/** Slope of the lift ds/dtheta in m/rad (positive before the nose); times cam speed it is follower speed. */
export function arcCamSlope(cam: ArcCam, theta: number): number {
  const signed = fromNose(theta);
  const t = Math.abs(signed);
  if (t >= cam.alpha) return 0;
  const onFlank = cam.alpha - t;
  if (onFlank < cam.phi) {
    const slope = (cam.R - cam.r0) * sin(onFlank);
    return signed < 0 ? slope : -slope;
  }
  return -cam.D * sin(signed);
}

/**
 * Second derivative of the lift d2s/dtheta2 in m/rad2.
 *
 * It jumps at each join; r0 + s + s'' is the radius of the arc in contact, which the tests hold it to.
 */
export function arcCamCurve(cam: ArcCam, theta: number): number {
  const t = Math.abs(fromNose(theta));
  if (t >= cam.alpha) return 0;
  const onFlank = cam.alpha - t;
  if (onFlank < cam.phi) return (cam.R - cam.r0) * cos(onFlank);
  return -cam.D * cos(t);
}

/**
 * Cam angle before the nose, rad (<= 0), at which a rising follower reaches lift `s` (0..lift, m).
 *
 * The exact inverse of `arcCamLift` on the rising side; lifts outside the range give the nearest end.
 */
export function arcCamAngleAtLift(cam: ArcCam, s: number): number {
  if (s <= 0) return -cam.alpha;
  if (s >= cam.lift) return 0;
  const joinLift = (cam.R - cam.r0) * (1 - cos(cam.phi));
  if (s >= joinLift) return -acos((s + cam.r0 - cam.rn) / cam.D);
  // 1 - cos written through the half angle: acos near 1 would lose half the digits.
  const half = s / (2 * (cam.R - cam.r0));
  return -cam.alpha + 2 * atan2(Math.sqrt(half), Math.sqrt(1 - half));
}
