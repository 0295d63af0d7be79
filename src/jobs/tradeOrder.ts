import type { JobCard } from './card.ts';
import { type CauseGroupId, type CauseId, causeGroupIds, causeGroups } from './causes.ts';
import { evidence, ruledOut } from './evidence.ts';
import { type CheckKind, checkKinds } from './evidenceChecks.ts';

/** A check worth making next, and what it is about. */
export interface CheckAdvice {
  readonly id: string;
  readonly name: string;
  /** Where on the set it looks. */
  readonly area: CauseGroupId;
  /** Labour with putting back; null where nobody has worked it out. */
  readonly minutes: number | null;
}

/** What the findings of a card leave to be checked. */
export interface Outlook {
  /** Causes that the findings leave open. */
  readonly open: readonly CauseId[];
  /** Null when no check tells more. */
  readonly next: CheckAdvice | null;
}

const areas: Readonly<Record<CauseGroupId, readonly string[]>> = {
  compression: ['compression', 'spin', 'start', 'blow', 'play', 'oil'],
  air: ['air', 'exhaust'],
  fuelSupply: ['tank', 'tap', 'vent', 'bowl', 'sample', 'hoseLook', 'hose'],
  lineAndInjector: ['union', 'stopFuel', 'joints', 'spray', 'holder', 'valve'],
  controls: ['window', 'stop', 'pin', 'linkage'],
  pump: ['cup', 'travel', 'push', 'shims', 'cam', 'face'],
};

/** Where on the set a check of the catalogue looks. Throws RangeError on a check that is in no area. */
export function areaOf(check: string): CauseGroupId {
  const area = causeGroupIds.find((one) => areas[one].includes(check));
  if (area === undefined) throw new RangeError(`check ${check} is in no area`);
  return area;
}

/** From the outside inwards, what costs least first; the loose pump last (common practice, no source). */
const order: readonly string[] = [
  ...['compression', 'air', 'tank', 'tap', 'vent', 'bowl', 'hose', 'union', 'window', 'stop'],
  ...['play', 'blow', 'hoseLook', 'sample', 'joints', 'linkage', 'pin', 'spin', 'oil', 'exhaust', 'spray'],
  ...['holder', 'valve', 'cup', 'travel', 'push', 'shims', 'cam', 'face'],
];

const wasMade = (kind: CheckKind, { findings }: Pick<JobCard, 'findings'>): boolean =>
  findings.some(({ check, code }) => check === kind.source && kind.codes.includes(code));

/** Whether one of its findings would tell one open cause from the others. */
const canTell = (kind: CheckKind, open: readonly CauseId[]): boolean =>
  kind.codes.some((code) => {
    const against = evidence[code]?.against ?? [];
    const gone = open.filter((cause) => against.includes(cause)).length;
    return gone > 0 && gone < open.length;
  });

/** What to check next as the trade goes about it, without having simulated anything; causes: what the card offers. */
export function byTradeOrder(card: Pick<JobCard, 'findings'>, causes: readonly CauseId[]): Outlook {
  const gone = ruledOut(card);
  const open = causes.filter((cause) => !gone.includes(cause));
  const kinds = order.flatMap((id) => checkKinds.filter((kind) => kind.id === id));
  const kind = kinds.find((one) => !wasMade(one, card) && canTell(one, open));
  const next =
    kind === undefined ? null : { id: kind.id, name: kind.name, area: areaOf(kind.id), minutes: null };
  return { open, next };
}

/** How many of some causes lie in an area. */
export const inArea = (causes: readonly CauseId[], area: CauseGroupId): number => {
  const group: readonly CauseId[] = causeGroups[area];
  return causes.filter((cause) => group.includes(cause)).length;
};
