import type { RecordedAct } from '../../src/session/recording.ts';
import { createSession, type Session } from '../../src/session/session.ts';
import { STEP } from '../../src/sim/set/state.ts';
import { firstJob } from '../jobs/bench.ts';

/** The first job in a session, worked for marks. */
export function openFirstJob(seed: number): Session {
  return createSession({ ...firstJob(), seed, mode: 'assessed' });
}

/** Lets a session's set go on until its clock stands where an act was given, then gives the act. */
export function giveAct(session: Session, { step, command }: RecordedAct): void {
  while (session.sim().step < step && session.isLive()) session.advance(STEP);
  session.do(command);
}
