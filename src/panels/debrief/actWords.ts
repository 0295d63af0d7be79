import type { ActKind, DoneAct } from '../../session/doneActs.ts';
import type { Core } from '../core.ts';
import { inTime } from '../format.ts';
import { eventText, isHarm, observationText } from '../words/events.ts';

export const kindNames: Readonly<Record<ActKind, string>> = {
  place: 'Place made safe',
  check: 'Checks',
  turn: 'Pulls and turns',
  work: 'Work on the set',
  force: 'Blows and pushes',
  card: 'Card',
  hint: 'Hints asked',
};

/** Everything that an act came to, in sentences. */
export function toldBy({ events }: DoneAct, core: Core): string[] {
  const made = events.some(({ kind }) => kind === 'found');
  return events
    .map((event) => (event.kind === 'observed' && !made ? observationText(event) : eventText(event, core)))
    .filter((text) => text !== '');
}

/** An act in one line: what was done; refusals say so. */
export function actText(act: DoneAct, core: Core): string {
  const [first = ''] = toldBy(act, core);
  const refused = act.events.some(({ kind }) => kind === 'refused' || kind === 'cardRefused');
  return refused ? `Not done. ${first}` : first;
}

/** When an act was given, on the set's clock. */
export const whenText = ({ from }: DoneAct): string => inTime(from / 100);

export const didHarm = ({ events }: DoneAct): boolean => events.some(isHarm);
export const foundSomething = ({ events }: DoneAct): boolean => events.some(({ kind }) => kind === 'found');
