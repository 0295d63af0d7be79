import { clashesOf, flawsOf, gapsOf } from './check.ts';
import type { Definition } from './definition.ts';
import { packedGlb } from './glb.ts';
import { buildSolids } from './solids.ts';

/** How thoroughly parts are tried: each by itself, or the assembled pump at several cam angles as well. */
export type Trial = 'parts' | 'assembly';

/**
 * Builds all solids and packs them for the bench, glTF binary.
 *
 * Throws with one plain sentence a fault when a solid is not closed or, with `assembly`, when parts overlap beyond
 * their fits or do not meet where they must.
 */
export async function bakedParts(def: Definition, trial: Trial): Promise<Uint8Array> {
  const solids = await buildSolids(def);
  const faults = [
    ...flawsOf(solids),
    ...(trial === 'assembly' ? [...clashesOf(solids), ...gapsOf(solids)] : []),
  ];
  if (faults.length > 0) throw new Error(faults.join('\n'));
  return packedGlb(solids);
}
