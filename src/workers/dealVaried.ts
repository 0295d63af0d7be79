import type { CauseId } from '../jobs/causes.ts';
import { circumstances } from '../jobs/evidenceTable.ts';
import { changesOf, type FaultKind } from '../jobs/faults.ts';
import type { Scenario, WorkId } from '../jobs/scenario.ts';
import type { Change } from '../sim/set/changeKinds.ts';
import { scatter } from '../sim/set/random.ts';

/** Something that catches the eye and hinders nothing: changes too small to matter, and what people say of it. */
export interface Herring {
  readonly id: string;
  readonly changes: readonly Change[];
  readonly told: string;
}

/** Red herrings of a co-operative's sets. That a sound set starts with each of them is tested, not believed. */
export const herrings: readonly Herring[] = [
  {
    id: 'lowTank',
    changes: [{ path: 'supply.tank', to: 3e-4 }],
    told: 'There is not much left in the tank, and nobody can say how old it is.',
  },
  {
    id: 'dustyElement',
    changes: [{ path: 'element.blocked', to: 0.3 }],
    told: 'The air element has not been cleaned since it was new.',
  },
  {
    id: 'oldFilter',
    changes: [{ path: 'supply.filterBlocked', to: 0.3 }],
    told: 'The fuel filter is the one that it came with.',
  },
  {
    id: 'sootyExhaust',
    changes: [{ path: 'exhaust.blocked', to: 0.3 }],
    told: 'It has always smoked a bit, and the exhaust is black inside.',
  },
  {
    id: 'tiredRings',
    changes: [{ path: 'cylinder.ringOrifice', to: 1.6e-7 }],
    told: 'It uses more oil than it used to.',
  },
  { id: 'dryStory', changes: [], told: 'Somebody thinks that it was once run until the tank was dry.' },
  { id: 'oilStory', changes: [], told: 'The oil was changed before it was put away.' },
  {
    id: 'knockStory',
    changes: [],
    told: 'It was dropped off the trailer a hand’s breadth, but it was not running then.',
  },
  { id: 'nothing', changes: [], told: 'Nobody remembers anything else about it.' },
];

/** Where the same kind of set may stand; invented. */
const places: readonly string[] = [
  'In a lean-to against the north wall, wired to the building. The floor is earth and the door sticks.',
  'Under a tin roof beside the track, wired to the building. Nettles up to the exhaust.',
  'In the corner of the cart shed, wired to the building. A hen sits on the tool chest.',
  'On a stone slab behind the press house, wired to the building. The rain comes in from one side.',
  'In a hut on the top terrace, wired to the building. One window, and it does not open.',
  'At the end of the drying floor, wired to the building. Dust of last year’s seed on everything.',
  'In the porch of the old dairy, wired to the building. Whitewash on the walls, a drain in the floor.',
  'In a pit house by the reservoir, wired to the building. Three steps down, and cold.',
];

const numbers = ['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const counted =
  /\b(two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?= (?:months|weeks|days|winters)\b)/g;

/** A draw of 0..1 that depends on the deal's seed, which job it is for, and what it is for. */
export type Draw = (name: string) => number;

export const drawFor =
  (seed: number, attempt: number): Draw =>
  (name) =>
    scatter(seed, name, attempt);

/** One of a list, each alike. */
export function oneOf<T>(items: readonly T[], draw: number): T {
  const item = items[Math.min(items.length - 1, Math.floor(draw * items.length))];
  if (item === undefined) throw new RangeError('nothing to draw from');
  return item;
}

/** The text with its small numbers of months, weeks, days or winters drawn anew. */
export function renumbered(text: string, draw: Draw): string {
  return text.replace(counted, (_word, _number, at) => oneOf(numbers, draw(`number-${at}`)));
}

const causesOfPump: ReadonlySet<CauseId> = new Set([
  'wornPair',
  'pairBinding',
  'returnSpringBroken',
  'camOrCupWorn',
  'wrongShims',
  'plungerHalfTurnOut',
  'pinOutOfFork',
  'pinBent',
]);
const seized: ReadonlySet<CauseId> = new Set([
  'plungerStuckUp',
  'plungerStuckDown',
  'plungerStuckInRotation',
  'plungerSticky',
]);
const causesOfFuel: ReadonlySet<CauseId> = new Set([
  'tankEmpty',
  'tapShut',
  'ventBlocked',
  'filterBlocked',
  'airDrawnIn',
  'airInLine',
  'deliveryValveLeaking',
  'jointLeaking',
]);

/** The work that mending a cause calls for, which the marking then asks for. */
export function workFor(cause: CauseId): WorkId[] {
  if (seized.has(cause)) return ['pumpOff', 'freePair', 'bleed'];
  if (causesOfPump.has(cause)) return ['pumpOff', 'bleed'];
  return causesOfFuel.has(cause) ? ['bleed'] : [];
}

/** What a job is varied into: which fault, how bad, beside what. */
export interface Variant {
  readonly scenario: unknown;
  readonly kinds: readonly { readonly id: string; readonly severity: number }[];
  readonly herring: string;
}

const neutral = {
  complaint:
    'It was put away working, and now it will not start, or not run as it should. That is all anyone can tell you.',
  history: ['It stood for about nine months.', 'It was put away with fuel in the tank.'],
};

/**
 * One variant of a job: its fault at another severity, other circumstances, another red herring, place and numbers.
 * `kinds`: the faults it shall have; `told`: whether the job's own complaint still fits them. `number` is part of the id.
 */
export function variantOf(
  base: Scenario,
  kinds: readonly FaultKind[],
  isTold: boolean,
  draw: Draw,
  number: string,
): Variant {
  const faults = kinds.map((kind, at) => {
    const severity = Math.round(draw(`severity-${at}`) * 100) / 100;
    return { id: kind.id, severity, changes: changesOf(kind, severity) };
  });
  const changes = faults.flatMap((fault) => fault.changes);
  const touched = new Set(changes.map(({ path }) => path));
  const free = (more: readonly Change[]) => more.every(({ path }) => !touched.has(path));
  const herring = oneOf(
    herrings.filter((one) => free(one.changes)),
    draw('herring'),
  );
  const taken = new Set([...touched, ...herring.changes.map(({ path }) => path)]);
  const around = circumstances(Math.floor(draw('around') * 1e6)).filter(({ path }) => !taken.has(path));
  const { complaint, history } = isTold ? base : neutral;
  const scenario = {
    ...base,
    id: `${base.id}-${number}`.slice(0, 60).replace(/-+$/, ''),
    title: `${base.title}, ${number}`.slice(0, 160),
    complaint,
    history: [
      ...history.map((line, at) => renumbered(line, (name) => draw(`${name}-${at}`))),
      herring.told,
    ].slice(-12),
    place: { ...base.place, where: oneOf(places, draw('place')) },
    changes: [...around, ...herring.changes, ...changes],
    seed: Math.floor(draw('seed') * 4294967295),
    marking: isTold
      ? base.marking
      : {
          ...base.marking,
          causes: [...new Set(kinds.map(({ cause }) => cause))],
          work: [...new Set(kinds.flatMap(({ cause }) => workFor(cause)))],
        },
  };
  return { scenario, kinds: faults.map(({ id, severity }) => ({ id, severity })), herring: herring.id };
}
