import { type Command, type Job, type JobEvent, perform } from '../../../src/jobs/job.ts';
import type { Judgement, Piece, Subject } from '../../../src/jobs/practice/piece.ts';
import { copyState } from '../../../src/sim/set/snapshot.ts';
import type { SimState } from '../../../src/sim/set/state.ts';
import { def } from '../../panels/fixture.ts';
import { open } from './hands.ts';

/** A subject under somebody's hands; `go` throws where the set refuses, so that no test passes by doing nothing. */
export type Played = {
  subject: Subject;
  job: Job;
  before: Readonly<SimState>;
  go(command: Command): readonly JobEvent[];
  found(): Set<string>;
  judge(answer?: string | null): Judgement;
};

export function play(piece: Piece, subject: Subject, level: number): Played {
  const job = open(subject);
  const before = copyState(job.sim);
  return {
    subject,
    job,
    before,
    go(command) {
      const events = perform(def, subject.scenario, job, command);
      const refused = events.find(({ kind }) => kind === 'refused' || kind === 'cardRefused');
      if (refused !== undefined) throw new Error(`${command.do}: ${JSON.stringify(refused)}`);
      return events;
    },
    found: () => new Set(job.card.findings.map(({ code }) => code)),
    judge: (answer = null) =>
      piece.judge(def, { subject, level, before, job, answer, channels: piece.channels }),
  };
}

/** Numbers of rounds that lie well apart. */
export const seeds = Array.from({ length: 20 }, (_, index) => 11 + 7919 * index);

/** Every subject of twenty rounds at a step. */
export const subjectsOf = (piece: Piece, level: number): Subject[] =>
  seeds.flatMap((seed) => piece.make(def, seed, level));
