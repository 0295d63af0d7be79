import { unpackAssignment } from '../session/assignment.ts';
import { type KeptHead, type KeptJob, resume } from '../session/keep.ts';
import type { Moment, Seeker, Work } from '../session/seek.ts';
import { createSession, type Session } from '../session/session.ts';
import { jobFiles, ownJob } from './offers.ts';
import { keptPlace, load, type Opened } from './openWork.ts';
import { jobHash, setHash } from './useRoute.ts';

/** Work that is over, to be looked back at. */
export interface Finished {
  readonly work: Work;
  /** The text of the link by which an instructor set it. */
  readonly set?: string | undefined;
  /** The moment of other work at which it was begun. */
  readonly from: Moment | null;
}

/** The work of a session, as far as it has come. */
export function finishedHere(session: Session, set?: string): Finished {
  const { definition: def, scenario, seed, terms, from } = session;
  const job = session.job();
  const acts = job.log.flatMap(({ step, command }) => (command === null ? [] : [{ step, command }]));
  return { work: { def, scenario, seed, terms, acts, endStep: job.sim.step }, set, from };
}

/** The file of a kept job: one of the page's own, or the one that came with an instructor's link. */
export function fileOf({ scenarioId, set }: KeptHead): unknown {
  if (set === undefined) return jobFiles.find(({ id }) => id === scenarioId);
  const read = unpackAssignment(set, ownJob);
  return read.ok ? read.value.scenario : undefined;
}

/** Work that is kept on this device, to be looked back at; or why it cannot be. */
export async function openFinished(
  id: string,
): Promise<Finished | { readonly refused: string; readonly kept: KeptJob | null }> {
  const place = await keptPlace();
  if (!('keeper' in place)) return { refused: `This browser keeps no work: ${place.why}`, kept: null };
  const kept = await place.keeper.read(id);
  if (kept === null) return { refused: 'This device has no such work; it may have been thrown away.', kept };
  const file = fileOf(kept.head);
  if (file === undefined) return { refused: 'This program does not have the job that it was.', kept };
  const { def, scenario } = load(file);
  const again = resume(def, scenario, kept);
  if (!again.ok) return { refused: again.why, kept };
  if (!again.job.ended) return { refused: 'It has not been handed over yet.', kept };
  const { terms, sim } = again.job;
  const work: Work = { def, scenario, seed: kept.head.seed, terms, acts: kept.acts, endStep: sim.step };
  return { work, set: kept.head.set, from: kept.head.from ?? null };
}

/** Begins work of its own at a moment of other work; it is kept from the start where the browser keeps anything. */
export async function openBranch({ work, set }: Finished, seeker: Seeker, moment: Moment): Promise<Opened> {
  const { def, scenario, seed, terms } = work;
  const { job, acts: done } = seeker.at(moment);
  // handed-over work is taken up before that
  if (job.ended) return { refused: 'The work is handed over there; go back before that.', kept: null };
  const branch: Moment = { acts: done, step: job.sim.step };
  const session = createSession({ def, scenario, seed, mode: terms.mode, from: job, branch });
  const place = await keptPlace();
  if (!('keeper' in place)) return { session, notKept: Promise.resolve(place.why) };
  const begun = Date.now();
  place.keeper.branch(session, begun, work.acts.slice(0, done), set);
  const address = set === undefined ? jobHash(scenario.id, terms.mode, begun) : setHash(set, begun);
  window.history.replaceState(null, '', address);
  return { session, notKept: place.trouble };
}
