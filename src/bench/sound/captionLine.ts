import { captions, type SoundId } from './sounds.ts';

/** How long the words for a sound stay after it was last heard, ms, and how many sounds are named at once. */
export const STAYS = 1800;
const MOST = 3;

/** Sounds that tell little: they are named only when there is room. */
const minor: ReadonlySet<SoundId> = new Set([
  'breath',
  'valveTick',
  'cord',
  'cordBack',
  'laidDown',
  'fitted',
  'lever',
]);

/** The words that are on the screen now; when: the time at which each sound was last heard, ms. */
export function captionLine(when: ReadonlyMap<SoundId, number>, now: number): string {
  // what began last comes first; what goes on keeps its place
  const fresh = [...when]
    .filter(([, at]) => now - at < STAYS)
    .map(([sound]) => sound)
    .reverse();
  const telling = fresh.filter((sound) => !minor.has(sound));
  const others = fresh.filter((sound) => minor.has(sound));
  return [...telling, ...others]
    .slice(0, MOST)
    .map((sound) => captions[sound])
    .join('; ');
}
