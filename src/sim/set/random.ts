/**
 * A number in 0..1 (1 excluded) that depends on the seed, a name and a count alone: natural scatter that no
 * other draw can shift. Integer hashing (FNV-1a, then a murmur-style finish), the same in every engine.
 */
export function scatter(seed: number, name: string, count: number): number {
  let h = 0x811c9dc5 ^ (seed | 0);
  for (let i = 0; i < name.length; i += 1) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
  h = Math.imul(h ^ count, 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 4_294_967_296;
}
