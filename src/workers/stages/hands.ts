import type { Command, JobEvent } from '../../jobs/job.ts';
import type { JointId, PartId } from '../../sim/set/commands.ts';
import { refused, type WorkerView } from '../worker.ts';

/** A piece of work that gives something back to whoever asked for it. */
export type Part<T> = Generator<Command, T, readonly JobEvent[]>;

/** What a worker has taken off, shut and slackened so far, as anyone keeps in mind who works. */
export interface Hands {
  readonly view: WorkerView;
  readonly off: Set<PartId>;
  readonly slack: Set<JointId>;
  tapOpen: boolean;
  areaClean: boolean;
  /** Number of findings on the card when the present look at the set began. */
  since: number;
}

/** The hands of somebody who has done nothing yet. */
export function freshHands(view: WorkerView): Hands {
  return { view, off: new Set(), slack: new Set(), tapOpen: true, areaClean: false, since: 0 };
}

/** True when a finding of one of these codes was made in the present look at the set. */
export const foundNow = ({ view, since }: Hands, ...codes: string[]): boolean =>
  view.card.findings.slice(since).some(({ code }) => codes.includes(code));

/** Takes a part off unless it is off; true when it is off now. */
export function* takeOffPart(hands: Hands, part: PartId): Part<boolean> {
  if (hands.off.has(part)) return true;
  const events = yield part === 'retainer' || part === 'cup' || part === 'returnSpring'
    ? { do: 'remove', part, held: true }
    : { do: 'remove', part };
  if (refused(events)) return false;
  hands.off.add(part);
  return true;
}

/** Puts a part back if it is off. */
export function* putBack(
  hands: Hands,
  part: PartId,
  how: { held?: boolean; wet?: boolean } = {},
): Part<void> {
  if (!hands.off.has(part)) return;
  yield { do: 'fit', part, ...how };
  hands.off.delete(part);
}

/** Tightens a joint to the maker's torque, its body held where it has one. */
export function* tightenUp(hands: Hands, joint: JointId): Part<void> {
  const backup = joint === 'pipeAtPump' || joint === 'pipeAtInjector';
  const { torque } = hands.view.def.joints[joint];
  yield joint === 'holder'
    ? { do: 'tighten', joint, torque, backup, newWasher: true }
    : { do: 'tighten', joint, torque, backup };
  hands.slack.delete(joint);
}

export function* setTap(hands: Hands, open: boolean): Part<void> {
  if (hands.tapOpen === open) return;
  yield { do: 'setTap', open };
  hands.tapOpen = open;
}

/** Hose off the pump, tap shut and its end capped. */
export function* hoseOff(hands: Hands): Part<void> {
  if (hands.off.has('hose')) return;
  yield* cleanArea(hands);
  yield* setTap(hands, false);
  yield { do: 'loosen', joint: 'hoseClip', to: 'off', backup: false };
  yield* takeOffPart(hands, 'hose');
}

export function* hoseOn(hands: Hands): Part<void> {
  if (!hands.off.has('hose')) return;
  yield { do: 'cover', opening: 'hoseEnd', on: false };
  yield* putBack(hands, 'hose');
  yield* tightenUp(hands, 'hoseClip');
}

/** Pipe off both unions, its ends capped. */
export function* pipeOff(hands: Hands): Part<void> {
  if (hands.off.has('pipe')) return;
  yield* cleanArea(hands);
  yield { do: 'loosen', joint: 'pipeAtPump', to: 'off', backup: true };
  yield { do: 'loosen', joint: 'pipeAtInjector', to: 'off', backup: true };
  yield* takeOffPart(hands, 'pipe');
  yield { do: 'cover', opening: 'pipeEnds', on: true };
}

/** Pipe on: tight at the pump, left slack at the injector for bleeding. */
export function* pipeOn(hands: Hands): Part<void> {
  if (!hands.off.has('pipe')) return;
  yield { do: 'cover', opening: 'pipeEnds', on: false };
  yield* putBack(hands, 'pipe');
  yield* tightenUp(hands, 'pipeAtPump');
  hands.slack.add('pipeAtInjector');
}

export function* cleanArea(hands: Hands): Part<void> {
  if (hands.areaClean) return;
  yield { do: 'clean', what: 'pumpArea', with: 'brush' };
  hands.areaClean = true;
}

/** The union at the injector tight again. */
export function* unionTight(hands: Hands): Part<void> {
  if (hands.slack.has('pipeAtInjector')) yield* tightenUp(hands, 'pipeAtInjector');
}
