import type { Job, JobEvent } from '../../jobs/job.ts';
import type { Core } from '../core.ts';
import { eventText } from '../words/events.ts';

const FIRST_WORDS = 110;

const aside: readonly JobEvent['kind'][] = ['spilled', 'waited', 'causeStruck', 'causeRestored', 'hintGiven'];
const rank = ({ kind }: JobEvent) => (aside.includes(kind) ? 1 : 0);

/** What came of the acts at a step; where nothing did at once, as of a pull, what came of the last of them in its time. */
function eventsAt({ log }: Readonly<Job>, at: number): JobEvent[] {
  const entries = log.filter(({ step }) => step === at);
  const events = entries.flatMap((entry) => entry.events);
  const [last] = entries.filter(({ command }) => command !== null).slice(-1);
  if (events.length > 0 || last === undefined) return events;
  const from = log.indexOf(last) + 1;
  const next = log.findIndex(({ command }, place) => place >= from && command !== null);
  return log.slice(from, next < 0 ? undefined : next).flatMap((entry) => entry.events);
}

/** What happened at a step of the model, in its first sentence; '' when nothing was told then. */
export function momentText(job: Readonly<Job>, at: number, core: Core): string {
  const events = eventsAt(job, at);
  // What ran out or went by in the meantime says less than what was done.
  const apart = [...events].sort((one, other) => rank(one) - rank(other));
  const told = apart.map((event) => eventText(event, core)).find((text) => text !== '') ?? '';
  return told.length > FIRST_WORDS ? `${told.slice(0, told.lastIndexOf(' ', FIRST_WORDS))} …` : told;
}
