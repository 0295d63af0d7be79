import type { FindingSource } from '../jobs/card.ts';
import type { CauseId } from '../jobs/causes.ts';
import { evidence } from '../jobs/evidence.ts';
import type { FindingCode } from '../jobs/findings.ts';
import { jointsOf, partsOver } from '../sim/set/blocks.ts';
import type { CheckId, MendId, PartId } from '../sim/set/commands.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { labourOf } from '../sim/set/labour.ts';
import { eventsOf, type HappeningOf } from './judges.ts';
import type { Judgement } from './rule.ts';
import type { Story } from './story.ts';
import { couldTell, type Look, lastNaming, openBefore, outcomesOf } from './telling.ts';

/** The parts that must come off to mend a cause; none where it is mended from outside (common practice, no source). */
const toMend: Partial<Record<CauseId, readonly PartId[]>> = {
  airInletBlocked: ['airCover'],
  airDrawnIn: ['hose'],
  governorSeized: ['windowCover'],
  plungerStuckUp: ['plunger', 'valve'],
  plungerStuckDown: ['plunger', 'valve'],
  plungerStuckInRotation: ['plunger', 'valve'],
  plungerSticky: ['plunger', 'valve'],
  pairBinding: ['pipe'],
  wornPair: ['plunger', 'valve'],
  returnSpringBroken: ['returnSpring'],
  camOrCupWorn: ['cup'],
  wrongShims: ['shims'],
  plungerHalfTurnOut: ['plunger'],
  pinOutOfFork: ['pump'],
  pinBent: ['plunger'],
  deliveryValveLeaking: ['valve'],
  jointLeaking: ['pipe'],
  injectorNotOpening: ['pipe'],
  injectorNotClosing: ['pipe'],
  injectorSpringWeak: ['pipe'],
  nozzleCoked: ['pipe'],
};

/** The parts that hide what a check looks at. */
const toSee: Partial<Record<FindingSource, readonly PartId[]>> = {
  airElement: ['airCover'],
  hoseFlow: ['hose'],
  pinFollows: ['windowCover'],
  linkage: ['windowCover'],
  stopLeverProof: ['windowCover'],
  pinTurn: ['windowCover'],
  cupEnd: ['pump'],
  plungerTravel: ['pump'],
  shimCount: ['pump'],
  camLift: ['pump'],
  freeSlide: ['returnSpring', 'valve'],
  plungerFace: ['plunger'],
  valveSeat: ['valve'],
};

/** What feeling by hand asks for, by what it finds: a holder broken loose, a plunger leant on. */
const toFeel: Partial<Record<FindingCode, readonly PartId[]>> = {
  holderAtTorque: ['pipe'],
  holderOverTight: ['pipe'],
  dragsUnderPush: ['pump', 'valve'],
  fastUnderPush: ['pump', 'valve'],
};

/** Parts with everything that must be off before they come off: the blocking graph followed to its end. */
export function closureOf(parts: readonly PartId[]): Set<PartId> {
  const all = new Set<PartId>();
  const open = [...parts];
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    if (all.has(part)) continue;
    all.add(part);
    open.push(...partsOver(part));
  }
  return all;
}

/** Working time of taking a part off and putting it back with its joints, s. */
export function stripSeconds(def: SetDefinition, part: PartId): number {
  const joints = (jointsOf[part] ?? []).reduce(
    (sum, joint) =>
      sum +
      labourOf({ do: 'loosen', joint, to: 'off', backup: false }) +
      labourOf({ do: 'tighten', joint, torque: def.joints[joint].torque, backup: false }),
    0,
  );
  return joints + labourOf({ do: 'remove', part }) + labourOf({ do: 'fit', part });
}

/** The parts that a look asked to be off. */
function uncoveredFor({ findings }: Look): Set<PartId> {
  return closureOf(findings.flatMap(({ check, code }) => toFeel[code] ?? toSee[check] ?? []));
}

/** Taking the whole pump off and putting it back, s: needless work of this length leaves nothing of the mark. Assumed. */
const WHOLE_STRIP = 600;

/** First removals of parts that neither the repair nor a check that could still tell something asked for. */
export function needlessStrips(story: Story): HappeningOf<'partRemoved'>[] {
  const { scenario } = story;
  const needed = closureOf(scenario.marking.causes.flatMap((cause) => toMend[cause] ?? []));
  const useful = story.looks.filter(({ told }) => told);
  const first = new Map<PartId, HappeningOf<'partRemoved'>>();
  for (const one of eventsOf(story, 'partRemoved')) {
    if (!first.has(one.event.part)) first.set(one.event.part, one);
  }
  return [...first.values()].filter(
    ({ event, order }) =>
      !needed.has(event.part) &&
      !useful.some((look) => look.order > order && uncoveredFor(look).has(event.part)),
  );
}

/** Whole when nothing was opened needlessly, less by the working time of what was; nothing without the right cause. */
export function openedForAReason(story: Story): Judgement {
  const naming = lastNaming(story);
  const needless = needlessStrips(story);
  const at = needless[0]?.at ?? naming?.at ?? null;
  if (!naming?.isRight) return { earned: 0, at };
  const seconds = (parts: Iterable<PartId>) =>
    [...parts].reduce((sum, part) => sum + stripSeconds(story.def, part), 0);
  const wanted = seconds(closureOf(story.scenario.marking.causes.flatMap((cause) => toMend[cause] ?? [])));
  const lost = seconds(needless.map(({ event }) => event.part)) / Math.max(WHOLE_STRIP, wanted);
  return { earned: Math.max(0, 1 - lost), at };
}

/** The causes that a repair puts right. */
const mends: Readonly<Record<MendId, readonly CauseId[]>> = {
  airElement: ['airInletBlocked'],
  exhaust: ['exhaustBlocked'],
  filter: ['filterBlocked', 'waterInFuel', 'fuelWaxed'],
  hose: ['airDrawnIn'],
  freshFuel: ['fuelWaxed', 'fuelContaminated', 'waterInFuel', 'tankEmpty'],
  decompressor: ['decompressorNotClosing'],
  valves: ['inletValveLeaking', 'exhaustValveLeaking'],
  governorLinkage: ['governorSeized'],
  injector: ['injectorNotOpening', 'injectorNotClosing', 'injectorSpringWeak', 'nozzleCoked'],
  deliveryValve: ['deliveryValveLeaking'],
  returnSpring: ['returnSpringBroken'],
  pipe: ['jointLeaking'],
  camAndCup: ['camOrCupWorn'],
  warmUp: ['tooColdForThePull', 'fuelWaxed'],
  pumpOverhaul: [
    'plungerStuckUp',
    'plungerStuckDown',
    'plungerStuckInRotation',
    'plungerSticky',
    'wornPair',
    'pinBent',
    'deliveryValveLeaking',
  ],
  engineOverhaul: ['ringsWorn', 'inletValveLeaking', 'exhaustValveLeaking'],
};
/** A new pair has a new pin, and ends whatever was wrong between plunger and barrel. */
const newPairMends: readonly CauseId[] = [
  'wornPair',
  'pinBent',
  'plungerStuckUp',
  'plungerStuckDown',
  'plungerStuckInRotation',
  'plungerSticky',
];

/** Repairs of what was neither the cause nor shown by a finding of its own. */
export function needlessRepairs(story: Story): { at: number; order: number }[] {
  const plain = eventsOf(story, 'found').flatMap(({ event, order }) => {
    const [cause, ...others] = evidence[event.finding.code]?.pointsAt ?? [];
    const isPlain = cause !== undefined && others.length === 0;
    // what a check shows that could tell nothing is no reason either
    return isPlain && couldTell(outcomesOf(event.finding), openBefore(story, order))
      ? [{ cause, order }]
      : [];
  });
  const repairs = story.happenings.flatMap(({ event, at, order }) => {
    if (event.kind === 'mended') return [{ at, order, causes: mends[event.what] }];
    return event.kind === 'pairOrdered' ? [{ at, order, causes: newPairMends }] : [];
  });
  return repairs.filter(
    ({ causes, order }) =>
      !causes.some((cause) => story.scenario.marking.causes.includes(cause)) &&
      !plain.some((one) => one.order < order && causes.includes(one.cause)),
  );
}

/** Whole when nothing was mended that was whole; one needless repair costs half, two cost all. */
export function mendedForAReason(story: Story): Judgement {
  const naming = lastNaming(story);
  const needless = needlessRepairs(story);
  const at = needless[0]?.at ?? naming?.at ?? null;
  return { earned: naming?.isRight ? Math.max(0, 1 - needless.length / 2) : 0, at };
}

/** The loose pump is read to know how to free it, not only to know what is wrong. */
const readsPump: readonly CheckId[] = ['cupEnd', 'pinTurn', 'plungerTravel'];

/**
 * Checks that the search for the cause was made of, until the right one was named: whether each could tell something, and
 * did not just show what it had shown before.
 */
export function searchedWith(story: Story): { at: number; useful: boolean }[] {
  const { causes } = story.scenario.marking;
  const end = eventsOf(story, 'causeNamed', ({ event }) => causes.includes(event.cause))[0]?.order;
  const shown = new Map<string, string>();
  const made: { at: number; useful: boolean }[] = [];
  for (const { moment, order, at, outcomes, findings, told } of story.looks) {
    if (end !== undefined && order >= end) break;
    const { command } = moment;
    if (command?.do !== 'check' || readsPump.includes(command.what) || outcomes.length === 0) continue;
    const seen = findings.map(({ code }) => code).join(' ');
    made.push({ at, useful: told && shown.get(command.what) !== seen });
    shown.set(command.what, seen);
  }
  return made;
}

/** The share of the checks that could still tell something when they were made. */
export function checkedToTell(story: Story): Judgement {
  const made = searchedWith(story);
  const wasted = made.filter(({ useful }) => !useful);
  const at = wasted[0]?.at ?? made[made.length - 1]?.at ?? null;
  return { earned: made.length === 0 ? 0 : 1 - wasted.length / made.length, at };
}
