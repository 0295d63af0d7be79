import { actVoices } from '../../../src/bench/sound/actVoices.ts';
import { hear } from '../../../src/bench/sound/hear.ts';
import { heard } from '../../../src/bench/sound/heard.ts';
import type { Bed, Shot } from '../../../src/bench/sound/voice.ts';
import type { JobEvent } from '../../../src/jobs/job.ts';
import type { Scenario } from '../../../src/jobs/scenario.ts';
import { createSession, type Session } from '../../../src/session/session.ts';
import type { SetDefinition } from '../../../src/sim/set/definition.ts';
import { def as benchSet, scenario } from '../../panels/fixture.ts';

/** One look, as a page at a hundred frames a second would take it. */
const LOOK = 0.01;

export type Ear = { shots: Shot[]; beds: Bed[]; events: JobEvent[] };

/** A session on a set with only these things changed. */
export function sessionWith(changes: Scenario['changes'], def: SetDefinition = benchSet): Session {
  return createSession({ def, scenario: { ...scenario, changes }, seed: 1, mode: 'practice' });
}

/** Does one command and listens until nothing moves, or for `seconds`. */
export function listen(session: Session, command: Parameters<Session['do']>[0], seconds = 12): Ear {
  const ear: Ear = { shots: [], beds: [], events: [] };
  const note = (events: readonly JobEvent[]) => {
    ear.events.push(...events);
    ear.shots.push(...events.flatMap((event) => actVoices(event, session.definition, session.sim())));
  };
  let before = heard(session.sim());
  note(session.do(command));
  const leave = session.store.subscribe((view, last) => {
    if (view.events !== last.events) note(view.events);
  });
  for (let t = 0; t < seconds && session.isLive(); t += LOOK) {
    session.advance(LOOK);
    const { shots, beds, now } = hear(session.definition, before, session.sim(), LOOK);
    before = now;
    ear.shots.push(...shots);
    ear.beds.push(...beds);
  }
  leave();
  return ear;
}

export const names = (ear: Ear): Set<string> =>
  new Set([...ear.shots, ...ear.beds].map(({ sound }) => sound));

/** Takes the pump off and its valve out, so that it lies in the hand. */
export function takeInHand(session: Session): void {
  const settle = () => {
    for (let i = 0; i < 3000 && session.advance(0.1); i += 1);
  };
  session.do({ do: 'clean', what: 'pumpArea', with: 'brush' });
  session.do({ do: 'turnFlywheel', to: 'lowSide' });
  settle();
  for (const joint of ['hoseClip', 'pipeAtPump', 'pipeAtInjector', 'pumpNut1', 'pumpNut2'] as const)
    session.do({ do: 'loosen', joint, to: 'off', backup: true });
  for (const part of ['hose', 'pipe'] as const) session.do({ do: 'remove', part });
  session.do({ do: 'loosen', joint: 'holder', to: 'slack', backup: false });
  session.do({ do: 'remove', part: 'windowCover' });
  session.do({ do: 'remove', part: 'pump', guidePin: true });
  session.do({ do: 'loosen', joint: 'holder', to: 'off', backup: false });
  for (const part of ['holder', 'valveSpring', 'valve'] as const) session.do({ do: 'remove', part });
}
