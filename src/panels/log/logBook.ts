import type { JobEvent } from '../../jobs/job.ts';
import type { Session } from '../../session/session.ts';
import type { Core } from '../core.ts';
import { eventText, isHarm, isRefusal, observationText } from '../words/events.ts';

export interface LogLine {
  /** Running number, from 1. */
  readonly number: number;
  readonly text: string;
  readonly tone: 'plain' | 'refusal' | 'harm';
}

/** All that was done so far in words, as a store that React can read. */
export interface LogBook {
  subscribe(listener: () => void): () => void;
  lines(): readonly LogLine[];
  /** Starts listening to the session; returns how to stop. */
  open(): () => void;
}

/** At most one announcement in this time, ms: a running engine reports much faster than anyone reads. */
const PAUSE = 500;

const toneOf = (event: JobEvent) => (isRefusal(event) ? 'refusal' : isHarm(event) ? 'harm' : 'plain');

/** Sentences for the events of one act; an observation speaks for itself only if it made no finding. */
function sentences(events: readonly JobEvent[], core: Core): Omit<LogLine, 'number'>[] {
  const made = events.some((event) => event.kind === 'found');
  return events.flatMap((event) => {
    const text = event.kind === 'observed' && !made ? observationText(event) : eventText(event, core);
    return text === '' ? [] : [{ text, tone: toneOf(event) }];
  });
}

/** Follows a session's log, once opened, and puts it into words, in bursts. */
export function createLogBook(session: Session, core: Core): LogBook {
  let read = session.job().log.length;
  let lines: readonly LogLine[] = [];
  let timer: ReturnType<typeof setTimeout> | null = null;
  let told = Number.NEGATIVE_INFINITY;
  const listeners = new Set<() => void>();

  const take = () => {
    timer = null;
    const entries = session.job().log.slice(read);
    read += entries.length;
    const fresh = entries.flatMap((entry) => sentences(entry.events, core));
    if (fresh.length === 0) return;
    told = performance.now();
    lines = [...lines, ...fresh.map((line, index) => ({ ...line, number: lines.length + index + 1 }))];
    for (const listener of listeners) listener();
  };
  const note = () => {
    if (timer !== null || session.job().log.length === read) return;
    const since = performance.now() - told;
    if (since >= PAUSE) take();
    else timer = setTimeout(take, PAUSE - since);
  };
  return {
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    lines: () => lines,
    open: () => {
      const leave = session.store.subscribe(note);
      note();
      return () => {
        leave();
        if (timer !== null) clearTimeout(timer);
        timer = null;
      };
    },
  };
}
