import type { Piece } from './piece.ts';
import { stuckOrFree } from './stuckOrFree.ts';

/** Every practice piece, in the order in which the first screen offers them. */
export const pieces: readonly Piece[] = [stuckOrFree];
