import { Gunzip, strFromU8 } from 'fflate';

/** Bytes given to the inflater at a time; it stops between two pieces once there is too much. */
const PIECE = 512;

/**
 * Inflates a gzip file piece by piece, so that a small file that stands for a huge one is dropped on the way. Returns
 * its text, or null where it is damaged, cut off or comes to more than `most` bytes; never throws.
 */
export function inflated(bytes: Uint8Array, most: number): string | null {
  const parts: Uint8Array[] = [];
  let size = 0;
  let isWhole = false;
  try {
    const unzip = new Gunzip((part, isLast) => {
      size += part.length;
      if (size > most) throw new RangeError('too much');
      parts.push(part);
      isWhole = isLast;
    });
    for (let at = 0; at < bytes.length; at += PIECE) {
      unzip.push(bytes.subarray(at, at + PIECE), at + PIECE >= bytes.length);
    }
  } catch {
    return null;
  }
  if (!isWhole) return null;
  const all = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return strFromU8(all);
}
