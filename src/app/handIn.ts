import type { Job } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { saveFile } from '../packages/saveFile.ts';
import { readReturned, returnWork } from '../session/returned.ts';
import type { Moment } from '../session/seek.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { ownJob } from './offers.ts';

/** Where the code that was given last is kept. */
const PLACE = 'freestroke-code';

/** The learner's code that was given last on this device; empty where none was or nothing is kept. */
export function lastCode(): string {
  try {
    return localStorage.getItem(PLACE) ?? '';
  } catch {
    return '';
  }
}

function keepCode(who: string): void {
  try {
    if (who === '') localStorage.removeItem(PLACE);
    else localStorage.setItem(PLACE, who);
  } catch {
    // a device that keeps nothing asks again next time
  }
}

/** A finished job with what its file says of it. */
export interface Finished {
  readonly def: SetDefinition;
  readonly scenario: Scenario;
  readonly job: Job;
  /** The text of the link by which it was set. */
  readonly set: string | undefined;
  readonly from: Moment | null;
  /** ms since 1970, by this device. */
  readonly begun: number;
  readonly ended: number;
}

/** Saves finished work as a file to pass on, under a learner's code; returns the first digits of its seal. */
export function saveReturned({ def, scenario, job, set, from, begun, ended }: Finished, who: string): string {
  keepCode(who);
  const isOwnJob = ownJob(scenario.id) !== undefined;
  const bytes = returnWork(def, scenario, job, {
    who,
    begun,
    ended,
    isOwnJob,
    ...(set !== undefined && { set }),
    ...(from && { from }),
  });
  const code = who === '' ? '' : `-${who.replace(/[^\w-]+/g, '-')}`;
  saveFile(`${scenario.id}${code}.freestroke`, bytes, 'application/gzip');
  const read = readReturned(bytes);
  return read.ok ? (read.value.head.seal.slice(0, 12).match(/.{4}/g)?.join(' ') ?? '') : '';
}
