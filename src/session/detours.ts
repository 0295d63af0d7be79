import { type Job, openJob } from '../jobs/job.ts';
import { needlessRepairs, needlessStrips, searchedWith, stripSeconds } from '../marking/economy.ts';
import { eventsOf } from '../marking/judges.ts';
import { sceneOf, tellStory } from '../marking/story.ts';
import { labourOf } from '../sim/set/labour.ts';
import type { Work } from './seek.ts';

/** Something that the job did not ask for, with the working time that it took. */
export interface Detour {
  readonly kind: 'check' | 'strip' | 'repair' | 'damage';
  /** Name of the check, part or repair; for damage, part and harm. */
  readonly what: string;
  /** Set clock at its moment, steps. */
  readonly at: number;
  /** Working time, s; null for damage, which costs a part and not time alone. */
  readonly seconds: number | null;
}

/** The detours of work that is over, in order: checks that could tell nothing, needless strips and repairs, damage. */
export function detoursOf({ def, scenario, seed }: Work, job: Readonly<Job>): Detour[] {
  const story = tellStory(def, scenario, sceneOf(openJob(def, scenario, seed).sim), [...job.log]);
  const idle = new Set(searchedWith(story).flatMap(({ at, useful }) => (useful ? [] : [at])));
  const checks = story.moments.flatMap(({ at, command, events }): Detour[] =>
    command?.do === 'check' && idle.has(at) && events.some(({ kind }) => kind === 'found')
      ? [{ kind: 'check', what: command.what, at, seconds: labourOf(command) }]
      : [],
  );
  const strips = needlessStrips(story).map(
    ({ event, at }): Detour => ({
      kind: 'strip',
      what: event.part,
      at,
      seconds: stripSeconds(def, event.part),
    }),
  );
  const repairs = needlessRepairs(story).flatMap(({ order, at }): Detour[] => {
    const { event, moment } = story.happenings[order] ?? {};
    const command = moment?.command;
    if (command?.do !== 'mend' && command?.do !== 'orderPair') return [];
    const what = event?.kind === 'mended' ? event.what : command.do;
    return [{ kind: 'repair', what, at, seconds: labourOf(command) }];
  });
  const damage = eventsOf(story, 'damaged').map(
    ({ event, at }): Detour => ({ kind: 'damage', what: `${event.part} ${event.what}`, at, seconds: null }),
  );
  return [...checks, ...strips, ...repairs, ...damage].sort((one, other) => one.at - other.at);
}
