import { nameOfPiece } from '../names.ts';

/** What may be named in a picture: its item number, the pieces that it is made of, and the kind of picture it is for. */
export type Item = {
  readonly number: number;
  readonly name: string;
  readonly pieces: readonly string[];
  readonly kind: 'pump' | 'set' | 'bench';
};

/** Pieces by item number; the first eight are the numbers of the section drawing as well. 3 is the port: no piece. */
const pump: readonly (readonly string[])[] = [
  ['holder'],
  ['valve'],
  [],
  ['barrel'],
  ['plunger'],
  ['returnSpring'],
  ['pin'],
  ['cup'],
  ['pumpBody'],
  ['valveSpring'],
  ['valveSeat'],
  ['springPlate'],
  ['retainer'],
  ['fork'],
  ['camshaft'],
  ['bleedScrew'],
  ['windowCover'],
  ['pumpNut1', 'pumpNut2'],
  ['shim0', 'shim1'],
  ['pipeAtPump'],
  ['studs'],
  ['hose'],
];

const set: readonly (readonly string[])[] = [
  ['pipe'],
  ['pipeAtInjector'],
  ['injector'],
  ['decompressor'],
  ['throttle', 'quadrant'],
  ['stopLever', 'stopPlate'],
  ['cordHandle'],
  ['starter'],
  ['tank'],
  ['cap'],
  ['sight', 'level'],
  ['tap', 'tapBody'],
  ['bowl', 'filterHead'],
  ['airCover', 'airBox', 'airElement'],
  ['exhaust'],
  ['camBox'],
  ['generator'],
  ['plug'],
];

const bench: readonly (readonly string[])[] = [
  ['cloth'],
  ['tray'],
  ['anvil'],
  ['vice', 'viceSlide'],
  ['woodBlock'],
  ['lightHammer'],
  ['mediumHammer'],
  ['heavyHammer'],
  ['sledge'],
  ['spanner'],
  ['secondSpanner'],
  ['torqueWrench'],
  ['screwdriver'],
  ['pliers'],
  ['lever'],
  ['swab'],
  ['brush'],
  ['caps'],
  ['rag'],
  ['card'],
  ['board'],
  ['releasingSolvent'],
  ['diesel'],
  ['acetone'],
  ['fuelCan'],
];

const numbered = (lists: readonly (readonly string[])[], from: number, kind: Item['kind']): Item[] =>
  lists.map((pieces, i) => ({
    number: from + i,
    name: nameOfPiece(pieces[0] ?? '') ?? 'Port',
    pieces,
    kind,
  }));

/** Every item, by rising number. */
export const items: readonly Item[] = [
  ...numbered(pump, 1, 'pump'),
  ...numbered(set, 31, 'set'),
  ...numbered(bench, 61, 'bench'),
];

/** The port of the barrel: a hole, not a piece. */
export const PORT = 3;
/** What leaders of other parts must not cover. */
export const KEPT_CLEAR: ReadonlySet<number> = new Set([PORT, 7]);

/** Pictures in which the pump is not one thing but parts. */
const inParts: ReadonlySet<string> = new Set(['section', 'apart', 'camEnd', 'outletEnd', 'window']);

/** What an item is called in a picture from a viewpoint. */
export function nameIn(view: string, { name, pieces }: Item): string {
  return pieces[0] === 'pumpBody' && inParts.has(view) ? 'Pump body' : name;
}

const kinds: Readonly<Record<string, readonly Item['kind'][]>> = {
  set: ['set'],
  injector: ['set'],
  fuel: ['set', 'pump'],
  pump: ['pump', 'set'],
  bench: ['bench', 'pump'],
};

/** Items that a picture from a viewpoint may name, the most telling first. */
export function itemsFor(view: string): readonly Item[] {
  const wanted = kinds[view] ?? ['pump'];
  const byKind = wanted.flatMap((kind) => items.filter((item) => item.kind === kind));
  // From afar the pump is one thing.
  return view === 'set' ? [...byKind, ...items.filter(({ pieces }) => pieces[0] === 'pumpBody')] : byKind;
}
