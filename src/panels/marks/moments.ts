import type { Job, JobEvent } from '../../jobs/job.ts';
import type { Core } from '../core.ts';
import { eventText } from '../words/events.ts';

const FIRST_WORDS = 110;

const aside: readonly JobEvent['kind'][] = ['spilled', 'waited', 'causeStruck', 'causeRestored', 'hintGiven'];
const rank = ({ kind }: JobEvent) => (aside.includes(kind) ? 1 : 0);

/** What happened at a step of the model, in its first sentence; '' when nothing was told then. */
export function momentText(job: Readonly<Job>, at: number, core: Core): string {
  const events = job.log.filter(({ step }) => step === at).flatMap((entry) => entry.events);
  // What ran out or went by in the meantime says less than what was done.
  const apart = [...events].sort((one, other) => rank(one) - rank(other));
  const told = apart.map((event) => eventText(event, core)).find((text) => text !== '') ?? '';
  return told.length > FIRST_WORDS ? `${told.slice(0, told.lastIndexOf(' ', FIRST_WORDS))} …` : told;
}
