import { acos, atan2, cos, PI, sin } from './maths.ts';

/** Cam of base circle, straight flanks and nose arc under a roller; lengths m, angles rad. */
export type TangentCam = {
  readonly r0: number;
  readonly rn: number;
  readonly lift: number;
  readonly roller: number;
  /** Distance from the camshaft axis to the centre of the nose arc. */
  readonly D: number;
  /** Base plus roller radius: where the roller's centre rests. */
  readonly rt: number;
  /** Nose plus roller radius: the roller centre's path round the nose centre. */
  readonly noseRoll: number;
  /** Angle from the start of a flank to the centre of the nose, fixed by tangency. */
  readonly alpha: number;
  /** Cam angle during which the roller is on one flank. */
  readonly phi: number;
};

/** Lift in m and its derivatives with cam angle, m/rad and m/rad2. */
export type CamPoint = { readonly s: number; readonly ds: number; readonly d2s: number };

/** Completes a tangent cam from base radius, nose radius (< r0), lift and roller radius, all m. */
export function tangentCam(r0: number, rn: number, lift: number, roller: number): TangentCam {
  const D = lift + r0 - rn;
  const alpha = acos((r0 - rn) / D);
  const rt = r0 + roller;
  const phi = atan2(D * sin(alpha), rt);
  return { r0, rn, lift, roller, D, rt, noseRoll: rn + roller, alpha, phi };
}

/** Lift and derivatives at `theta` rad from the centre of the nose (any real angle; rest on the base circle). */
export function tangentCamPoint(cam: TangentCam, theta: number): CamPoint {
  const signed = theta - 2 * PI * Math.round(theta / (2 * PI));
  const t = Math.abs(signed);
  const side = signed < 0 ? 1 : -1;
  if (t >= cam.alpha) return { s: 0, ds: 0, d2s: 0 };
  const onFlank = cam.alpha - t;
  if (onFlank < cam.phi) {
    const c = cos(onFlank);
    return {
      s: cam.rt * (1 / c - 1),
      ds: (side * cam.rt * sin(onFlank)) / (c * c),
      d2s: (cam.rt * (2 - c * c)) / (c * c * c),
    };
  }
  const { D, noseRoll } = cam;
  const sn = sin(t);
  const cs = cos(t);
  const q = Math.sqrt(noseRoll * noseRoll - D * D * sn * sn);
  const cross = (D * D * sn * cs) / q;
  return {
    s: D * cs + q - cam.rt,
    ds: side * (D * sn + cross),
    d2s: -D * cs - (D * D * (cs * cs - sn * sn) + cross * cross) / q,
  };
}
