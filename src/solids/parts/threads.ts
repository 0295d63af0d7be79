import type { Definition } from '../definition.ts';
import { mm } from '../definition.ts';
import type { Thread } from '../profile.ts';

/** Play between the flanks of an outside and an inside thread as they are drawn, m. */
export const THREAD_PLAY = 0.06 * mm;

/** Thread of the delivery-valve holder in the body. */
export const holderThread = (def: Definition): Thread => ({
  crest: def.shapes.holder.threadRadius,
  depth: 0.75 * mm,
  pitch: 1.5 * mm,
});

/** Thread of the pipe's union nuts. */
export const unionThread = (def: Definition): Thread => ({
  crest: def.shapes.holder.unionRadius,
  depth: 0.6 * mm,
  pitch: 1.25 * mm,
});

/** Thread of the studs. */
export const studThread = (def: Definition): Thread => ({
  crest: def.shapes.stud.radius,
  depth: 0.55 * mm,
  pitch: 1.25 * mm,
});
