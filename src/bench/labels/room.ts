import type { Room } from './layout.ts';

/** A box in CSS pixels. */
export type Box = {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
};

const EDGE = 6;
/** What lies over less than this of the picture's length is a side strip, not a row, as a share. */
const LONG = 0.5;

/**
 * The room that is left for labels in a picture beside what the page lays over it: rows take from top or bottom, strips
 * at a side from that side. Boxes are given in the picture's own pixels.
 */
export function roomBeside(
  size: { width: number; height: number },
  row: number,
  boxes: readonly Box[],
): Room {
  const room = { left: EDGE, right: size.width - EDGE, top: EDGE, bottom: size.height - EDGE };
  for (const box of boxes) {
    const [left, right] = [Math.max(0, box.left), Math.min(size.width, box.right)];
    const [top, bottom] = [Math.max(0, box.top), Math.min(size.height, box.bottom)];
    if (right <= left || bottom <= top) continue;
    const isSide = bottom - top > right - left && right - left < LONG * size.width;
    if (isSide && left > size.width / 2) room.right = Math.min(room.right, left - EDGE);
    else if (isSide) room.left = Math.max(room.left, right + EDGE);
    else if (top + bottom < size.height) room.top = Math.max(room.top, bottom + EDGE);
    else room.bottom = Math.min(room.bottom, top - EDGE);
  }
  return { ...room, row };
}

/** Boxes of what the page lays over a picture, in the picture's own pixels. */
export function boxesOver(picture: Element): Box[] {
  const own = picture.getBoundingClientRect();
  const over = picture.closest('.bench')?.querySelectorAll('[data-over-picture]') ?? [];
  return [...over].map((one) => {
    const box = one.getBoundingClientRect();
    return {
      left: box.left - own.left,
      top: box.top - own.top,
      right: box.right - own.left,
      bottom: box.bottom - own.top,
    };
  });
}
