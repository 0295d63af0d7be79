import set from '../../models/bench-set/set.json' with { type: 'json' };

/** The set's definition as the solids read it: lengths m, angles rad. */
export type Definition = typeof set;

/** The definition that the solids are built from unless a caller brings another. */
export const definition: Definition = set;

/** Names of the parts that have drawing dimensions. */
export type ShapeId = keyof Definition['shapes'];

/** One millimetre in metres: every length here is in metres. */
export const mm = 0.001;
