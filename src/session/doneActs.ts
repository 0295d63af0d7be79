import { ruledOut } from '../jobs/evidence.ts';
import type { Command, JobEvent } from '../jobs/job.ts';
import type { Seeker } from './seek.ts';

/** What sort of act it was, as far as a picture of the whole work tells acts apart. */
export type ActKind = 'place' | 'check' | 'turn' | 'work' | 'force' | 'card' | 'hint';

/** One act of work that is looked back at, with what came of it until the next one. */
export interface DoneAct {
  /** Number among all acts of the recording, from 1: so many are done after it. */
  readonly number: number;
  readonly kind: ActKind;
  readonly command: Command;
  /** The set's clock when it was given, just after it, and when the next act was given; steps. */
  readonly from: number;
  readonly after: number;
  readonly until: number;
  readonly events: readonly JobEvent[];
  /** Causes on the card that were not struck out after it, and that the findings up to then leave open. */
  readonly onCard: number;
  readonly byFindings: number;
}

const kinds: Partial<Record<Command['do'], ActKind>> = {
  setPlace: 'place',
  check: 'check',
  pullCord: 'turn',
  turnFlywheel: 'turn',
  strike: 'force',
  pushPin: 'force',
  pushPlunger: 'force',
  grasp: 'force',
  letGo: 'force',
  strikeOut: 'card',
  restore: 'card',
  nameCause: 'card',
  judgePair: 'card',
  writeCard: 'card',
  handOver: 'card',
  askHint: 'hint',
};

interface Draft {
  number: number;
  command: Command;
  from: number;
  events: JobEvent[];
}

/** Acts with the events that belong to each; what a hand did between taking hold and letting go is one act. */
function drafts(log: ReturnType<Seeker['whole']>['log']): Draft[] {
  const all: Draft[] = [];
  let number = 0;
  for (const { step, command, events } of log) {
    if (command !== null) number += 1;
    const last = all[all.length - 1];
    if (command === null || command.do === 'handTo') {
      last?.events.push(...events);
      continue;
    }
    all.push({ number, command, from: step, events: [...events] });
  }
  return all;
}

/** Every act of work in order. */
export function doneActs(seeker: Seeker): DoneAct[] {
  const { log } = seeker.whole();
  const { scenario, endStep } = seeker.work;
  const after = seeker.after();
  const struck = new Set<string>();
  const findings: Parameters<typeof ruledOut>[0]['findings'] = [];
  const all = drafts(log);
  return all.map(({ number, command, from, events }, at) => {
    for (const event of events) {
      if (event.kind === 'causeStruck') struck.add(event.cause);
      if (event.kind === 'causeRestored') struck.delete(event.cause);
      if (event.kind === 'found') findings.push(event.finding);
    }
    const out = ruledOut({ findings }).filter((cause) => scenario.causes.includes(cause));
    return {
      number,
      kind: kinds[command.do] ?? 'work',
      command,
      from,
      after: after[number - 1] ?? from,
      until: all[at + 1]?.from ?? endStep,
      events,
      onCard: scenario.causes.length - struck.size,
      byFindings: scenario.causes.length - out.length,
    };
  });
}
