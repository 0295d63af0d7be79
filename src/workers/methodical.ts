import { type CauseId, causeIds } from '../jobs/causes.ts';
import { evidence, pointsAt, ruledOut } from '../jobs/evidence.ts';
import { crackHolder, leanOn, openOutlet, pumpOff, readPump } from './stages/deeper.ts';
import { foundNow, freshHands, type Hands, type Part } from './stages/hands.ts';
import {
  lookIntoWindow,
  lookRound,
  proveCompression,
  proveFuel,
  proveNozzle,
  proveSupply,
} from './stages/look.ts';
import { precautions } from './stages/receive.ts';
import { mendCause, putTogether } from './stages/repair.ts';
import { handOver, provesItself } from './stages/start.ts';
import type { Worker } from './worker.ts';

/** Looks at the set afresh this often before giving up. */
const ROUNDS = 4;

/** In what order causes are worth a hand when findings point at them alike: what is quickly tried first. */
const byEffort: readonly CauseId[] = [
  'stopLeverAtStop',
  'tapShut',
  'ventBlocked',
  'tankEmpty',
  'airInLine',
  'filterBlocked',
  'airDrawnIn',
  'jointLeaking',
  'governorSeized',
  'deliveryValveLeaking',
  'injectorNotOpening',
];
const effort = (cause: CauseId): number => {
  const at = byEffort.indexOf(cause);
  return at < 0 ? byEffort.length : at;
};

/** Findings of the present look. */
const now = ({ view, since }: Hands) => view.card.findings.slice(since);

/** Causes that a finding of the present look names by itself, each once. */
export function plain(hands: Hands): CauseId[] {
  const named = new Set<CauseId>();
  for (const { code } of now(hands)) {
    const { pointsAt: causes = [] } = evidence[code] ?? {};
    if (causes.length === 1) for (const cause of causes) named.add(cause);
  }
  return [...named];
}

/** Causes that the present look leaves open, most pointed-at first. */
function open(hands: Hands, mended: ReadonlySet<CauseId>): CauseId[] {
  const findings = now(hands);
  const out = ruledOut({ findings });
  const weight = (cause: CauseId) => findings.filter((one) => pointsAt(one, cause)).length;
  return causeIds
    .filter((cause) => !out.includes(cause) && !mended.has(cause))
    .sort((a, b) => weight(b) - weight(a) || effort(a) - effort(b));
}

/** A way of looking a set over, given what has been mended before. */
export type LookOver = (hands: Hands, mended: ReadonlySet<CauseId>) => Part<void>;

/** From the outside inwards, and no further than what was found asks for. */
const lookOver: LookOver = function* (hands, mended) {
  yield* lookRound(hands);
  yield* lookIntoWindow(hands);
  // a plunger that will not turn is looked at before it is cranked
  if (foundNow(hands, 'pinHeld') && foundNow(hands, 'linkageFree')) {
    yield* crackHolder(hands);
    if (!foundNow(hands, 'holderOverTight')) {
      yield* intoThePump(hands);
      yield* proveCompression(hands);
    }
    return;
  }
  yield* proveCompression(hands);
  yield* proveFuel(hands);
  const comes = foundNow(hands, 'fuelAtUnion');
  if (!comes) yield* proveSupply(hands);
  else if (!foundNow(hands, 'compressionWeak')) yield* proveNozzle(hands);
  if (plain(hands).some((cause) => !mended.has(cause))) return;
  if (foundNow(hands, 'noFuelAtUnion') && mended.has('airInLine')) yield* intoThePump(hands);
  else if (foundNow(hands, 'sprayFine')) yield* intoThePump(hands);
  else if (foundNow(hands, 'sprayNone')) {
    yield* openOutlet(hands);
    if (mended.has('injectorNotOpening') && !foundNow(hands, 'seatLeaks')) yield* intoThePump(hands);
  }
};

/** The pump off and read; a plunger that is stuck is leant on with the valve out. */
export function* intoThePump(hands: Hands): Part<void> {
  yield* pumpOff(hands);
  yield* readPump(hands);
  if (!foundNow(hands, 'plungerStuck')) return;
  yield* openOutlet(hands);
  yield* leanOn(hands);
}

/** Strikes out what the findings exclude and names what is left, with the last finding that shows it. */
function* writeDown(hands: Hands, cause: CauseId | undefined): Part<void> {
  const { card, scenario } = hands.view;
  if (cause === undefined || !scenario.causes.includes(cause)) return;
  if (card.struck.includes(cause)) yield { do: 'restore', cause };
  for (const gone of ruledOut({ findings: now(hands) })) {
    const can = gone !== cause && scenario.causes.includes(gone) && !card.struck.includes(gone);
    if (can) yield { do: 'strikeOut', cause: gone };
  }
  const shown = now(hands).filter((one) => pointsAt(one, cause));
  const because = shown[shown.length - 1];
  if (because !== undefined) yield { do: 'nameCause', cause, because: because.id };
}

/** What to mend after this look: all that is plainly wrong, else the likeliest of what is left. */
function worthMending(hands: Hands, mended: ReadonlySet<CauseId>, likeliest: CauseId | undefined): CauseId[] {
  const wrong = plain(hands).filter((cause) => !mended.has(cause));
  const isLikely = likeliest !== undefined && now(hands).some((one) => pointsAt(one, likeliest));
  const all = !isLikely || wrong.includes(likeliest) ? wrong : [...wrong, likeliest];
  // the line first, the pump last: what is opened last is closed first
  return causeIds.filter((cause) => all.includes(cause));
}

/** Who does any job by findings: looks over the set, names, mends, tries, and looks again when it does not run. */
export const byFindings = (name: string, look: LookOver): Worker => ({
  name,
  *work(view) {
    const hands = freshHands(view);
    const mended = new Set<CauseId>();
    for (const what of precautions) yield { do: 'setPlace', what, on: true };
    for (let round = 0; round < ROUNDS; round += 1) {
      hands.since = view.card.findings.length;
      yield* look(hands, mended);
      const likeliest = open(hands, mended)[0];
      yield* writeDown(hands, likeliest);
      for (const cause of worthMending(hands, mended, likeliest)) {
        yield* mendCause(hands, cause);
        mended.add(cause);
      }
      yield* putTogether(hands);
      if (yield* provesItself(view)) break;
    }
    yield* handOver(view);
  },
});

/** Goes no further into the set than what was found asks for. */
export const methodical: Worker = byFindings('methodical', lookOver);
