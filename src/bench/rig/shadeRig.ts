import { type Standing, shadeStill } from '../look/openness.ts';
import type { Rig } from './rig.ts';

/** What stands still and near enough together to shade itself. */
const STILL = [
  'engine',
  'frame',
  'generator',
  'starter',
  'exhaust',
  'camBox',
  'guide',
  'quadrant',
  'stopPlate',
  'airBox',
  'airCover',
  'injector',
  'tank',
  'tapBody',
  'filterHead',
  'flywheel',
  'tray',
  'anvil',
  'vice',
  'toolRoll',
  'fuelCan',
  'releasingSolvent',
  'diesel',
  'acetone',
];

/** Gives every still thing, and the bench under it, its soft shade. */
export function shadeRig(rig: Rig): void {
  const standing = (id: string, cut = false): Standing[] => {
    const piece = rig.piece(id);
    piece.group.updateMatrixWorld(true);
    const mesh = cut ? piece.half : piece.whole;
    return mesh === null ? [] : [{ geometry: mesh.geometry, matrix: piece.group.matrixWorld }];
  };
  const still = STILL.flatMap((id) => standing(id));
  shadeStill(still, [...still, ...standing('benchTop'), ...standing('cloth'), ...standing('camBox', true)]);
}
