import type { JobEvent } from '../../jobs/job.ts';
import type { Session } from '../../session/session.ts';
import { actVoices } from './actVoices.ts';
import { hear } from './hear.ts';
import { type Heard, heard } from './heard.ts';
import type { Bed, Shot } from './voice.ts';

/** Real time that one look may cover, s: after a pause nothing is made up for. */
const LONGEST = 0.1;

/** Where what is heard goes. */
export type Listener = {
  shots(shots: readonly Shot[]): void;
  beds(beds: readonly Bed[]): void;
};

/** Listens to a session for as long as it is asked to: to events as they come, to the set while it moves. Returns the way out. */
export function followSound(session: Session, listener: Listener): () => void {
  let before: Heard = heard(session.sim());
  let frame = 0;
  let last: number | null = null;
  let told: readonly JobEvent[] = session.store.getState().events;

  const look = (seconds: number) => {
    const { shots, beds, now } = hear(session.definition, before, session.sim(), seconds);
    before = now;
    if (shots.length > 0) listener.shots(shots);
    listener.beds(beds);
  };
  const tick = (now: number) => {
    const seconds = last === null ? 0 : Math.min((now - last) / 1000, LONGEST);
    last = now;
    look(seconds * session.store.getState().pace);
    if (session.isLive()) frame = requestAnimationFrame(tick);
    else rest();
  };
  const rest = () => {
    frame = 0;
    last = null;
    listener.beds([]);
  };
  const note = () => {
    const { events } = session.store.getState();
    if (events !== told) {
      told = events;
      const shots = events.flatMap((event) => actVoices(event, session.definition, session.sim()));
      if (shots.length > 0) listener.shots(shots);
    }
    if (frame === 0 && session.isLive()) {
      before = heard(session.sim());
      frame = requestAnimationFrame(tick);
    }
  };
  const leave = session.store.subscribe(note);
  note();
  return () => {
    leave();
    cancelAnimationFrame(frame);
    listener.beds([]);
  };
}
