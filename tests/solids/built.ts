import { definition } from '../../src/solids/definition.ts';
import { buildSolids } from '../../src/solids/solids.ts';

/** All solids of the bench's set; building takes about a second. */
export const solids = await buildSolids(definition);
