import type { Channel, Judgement, Piece, Subject } from '../../jobs/practice/piece.ts';
import { createSession, type Session } from '../../session/session.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';

/** One subject of a round with its session, as it was handed over, and what has been said of it so far. */
export interface Bout {
  readonly subject: Subject;
  readonly session: Session;
  readonly before: Readonly<SimState>;
}

/** Longest that one preparing command is let go on, in tenths of a second. */
const PATIENCE = 600;

/** Opens the subjects of a round and brings each to where the learner takes over. */
export function openRound(piece: Piece, def: SetDefinition, seed: number, level: number): Bout[] {
  return piece.make(def, seed, level).map((subject) => {
    const { scenario, prepare } = subject;
    const session = createSession({ def, scenario, seed: subject.seed, mode: 'practice' });
    for (const command of prepare) {
      session.do(command);
      for (let waited = 0; waited < PATIENCE && session.advance(0.1); waited += 1);
    }
    session.look({ view: subject.view, section: subject.view === 'section' });
    return { subject, session, before: structuredClone(session.sim()) };
  });
}

/** Judges one subject with what was done to it and said of it; the hand lets go first. */
export function judgeBout(
  piece: Piece,
  def: SetDefinition,
  { subject, session, before }: Bout,
  level: number,
  answer: string | null,
  channels: readonly Channel[],
): Judgement {
  if (session.sim().hand.grasp !== null) session.do({ do: 'letGo' });
  return piece.judge(def, { subject, level, before, job: session.job(), answer, channels });
}

/** A round's number that nobody can foresee. */
export function anySeed(): number {
  const [word = 1] = crypto.getRandomValues(new Uint32Array(1));
  return word % 1_000_000;
}
