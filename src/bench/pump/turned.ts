import type { BufferGeometry } from 'three';
import type { PartForm } from '../form/part.ts';
import type { Profile } from '../form/profile.ts';
import { capsOf, revolve } from '../form/revolve.ts';
import { hatched, type PaintId, painted } from '../look/paints.ts';

/** How the cut faces of a part are hatched: angle rad, spacing m (0 = thin part, drawn solid), lighter for the pair. */
export type Hatch = { readonly angle: number; readonly spacing: number; readonly light?: boolean };

export const BACK = { from: Math.PI / 2, length: Math.PI } as const;

/** A turned part whole and cut in half. */
export function turned(
  profile: Profile,
  paint: PaintId,
  hatch: Hatch,
  chamfer = 0.3e-3,
  segments = 40,
): PartForm {
  return {
    whole: painted(revolve(profile, { chamfer, segments }), paint),
    half: painted(revolve(profile, { ...BACK, chamfer, segments }), paint),
    cut: cutFace(capsOf(profile, chamfer), hatch),
  };
}

/** Hatches a flat cut face. */
export function cutFace(face: BufferGeometry, hatch: Hatch): BufferGeometry {
  return hatched(face, hatch.angle, hatch.spacing, hatch.light ?? false);
}
