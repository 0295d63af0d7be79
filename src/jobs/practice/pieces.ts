import { bleedClear } from './bleedClear.ts';
import { compression } from './compression.ts';
import { howHard } from './howHard.ts';
import type { Piece } from './piece.ts';
import { pinInSlot } from './pinInSlot.ts';
import { readPump } from './readPump.ts';
import { stuckOrFree } from './stuckOrFree.ts';
import { torqueByFeel } from './torqueByFeel.ts';
import { whichEnd } from './whichEnd.ts';

/** Every practice piece, in the order in which the work comes to them. */
export const pieces: readonly Piece[] = [
  compression,
  stuckOrFree,
  readPump,
  whichEnd,
  howHard,
  pinInSlot,
  torqueByFeel,
  bleedClear,
];
