import { applyChanges } from '../sim/set/changes.ts';
import type { SimCommand } from '../sim/set/commands.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import type { SimEvent } from '../sim/set/events.ts';
import { startState } from '../sim/set/start.ts';
import { type SimState, STEP } from '../sim/set/state.ts';
import { step } from '../sim/set/step.ts';
import { isLive } from '../sim/set/time.ts';
import { blankCard, type CardCommand, type CardEvent, type JobCard, writeOnCard } from './card.ts';
import { findingsFrom } from './findings.ts';
import { askHint } from './hints.ts';
import type { Mode, Scenario } from './scenario.ts';
import { toolsFor } from './tools.ts';

/** Everything that can be done in a job: to the set, or to the card. */
export type Command = SimCommand | CardCommand;
export type JobEvent = SimEvent | CardEvent;

/** One command, or (command null) one step in which something went on by itself, and what came of it. */
export interface LogEntry {
  readonly step: number;
  readonly command: Command | null;
  readonly events: readonly JobEvent[];
}

/** How a job is worked, which decides what help there is and what it costs. */
export interface Terms {
  readonly mode: Mode;
  /** The deepest hint that is given, 0 (none) to 3. */
  readonly hints: number;
}

/** A job under way: plain data, nothing hidden elsewhere. */
export interface Job {
  readonly scenarioId: string;
  readonly terms: Terms;
  sim: SimState;
  card: JobCard;
  log: LogEntry[];
  ended: boolean;
}

/** How long `perform` waits for things to come to rest, and how long it lets a running engine run, s. */
const REST_LIMIT = 60;
const RUNNING_WATCH = 4;

const cardCommands: ReadonlySet<string> = new Set<CardCommand['do']>([
  'strikeOut',
  'restore',
  'nameCause',
  'judgePair',
  'writeCard',
  'handOver',
  'askHint',
]);

const isCardCommand = (command: Command): command is CardCommand => cardCommands.has(command.do);

/** The terms that a way of working has where nobody set others. */
export const termsOf = (mode: Mode): Terms => ({ mode, hints: mode === 'assessed' ? 0 : 3 });

/** A job as the learner receives it: the scenario's hidden changes made, its given precautions in force. */
export function openJob(
  def: SetDefinition,
  scenario: Scenario,
  seed: number,
  terms: Terms = termsOf('practice'),
): Job {
  const sim = startState(def, seed);
  applyChanges(def, sim, scenario.changes);
  for (const what of scenario.place.given) sim.place[what] = true;
  return { scenarioId: scenario.id, terms, sim, card: blankCard(), log: [], ended: false };
}

/** The last thing that was done. */
function lastAct(job: Job): Command | null {
  for (let at = job.log.length - 1; at >= 0; at -= 1) {
    const command = job.log[at]?.command;
    if (command) return command;
  }
  return null;
}

/** Writes on the card what the events show; returns the events with the findings behind them. */
function withFindings(
  def: SetDefinition,
  job: Job,
  act: Command | null,
  events: readonly SimEvent[],
): JobEvent[] {
  const { findings } = job.card;
  const all: JobEvent[] = [];
  for (const event of events) {
    all.push(event);
    for (const draft of findingsFrom(event, act, job.sim, def)) {
      // a plunger that is free stays free under the next tap; that is not found again
      const again = draft.check === 'strike' || draft.check === 'byHand';
      if (again && findings[findings.length - 1]?.code === draft.code) continue;
      const id = `${draft.code}#${findings.filter((one) => one.code === draft.code).length + 1}`;
      const finding = { id, at: job.sim.step, ...draft };
      findings.push(finding);
      all.push({ kind: 'found', finding });
    }
  }
  return all;
}

function doOnSet(def: SetDefinition, scenario: Scenario, job: Job, command: SimCommand): JobEvent[] {
  const missing = toolsFor(command).find((tool) => !scenario.tools.includes(tool));
  if (missing !== undefined) {
    return [{ kind: 'cardRefused', act: command.do, code: 'toolNotOnRoll', by: missing }];
  }
  return withFindings(def, job, command, step(def, job.sim, [command]));
}

function answer(def: SetDefinition, scenario: Scenario, job: Job, command: Command): JobEvent[] {
  if (!isCardCommand(command)) return doOnSet(def, scenario, job, command);
  if (command.do === 'askHint') return askHint(job, command.level, command.about);
  return writeOnCard(job.card, command, scenario.causes);
}

/**
 * Carries out one command: on the card, or on the set over one model step (0.01 s). Changes the job.
 * Returns what happened at once; what goes on by itself afterwards comes from `advance`.
 */
export function doCommand(def: SetDefinition, scenario: Scenario, job: Job, command: Command): JobEvent[] {
  if (job.ended) return [{ kind: 'cardRefused', act: command.do, code: 'jobEnded', by: '' }];
  const at = job.sim.step;
  const events = answer(def, scenario, job, command);
  if (command.do === 'handOver') job.ended = true;
  job.log.push({ step: at, command, events });
  return events;
}

/** Lets the set go on by itself for a number of steps; changes the job. */
export function advance(def: SetDefinition, job: Job, steps: number): JobEvent[] {
  const all: JobEvent[] = [];
  for (let done = 0; done < steps; done += 1) {
    const events = withFindings(def, job, lastAct(job), step(def, job.sim, []));
    if (events.length > 0) {
      job.log.push({ step: job.sim.step, command: null, events });
      all.push(...events);
    }
  }
  return all;
}

/** Carries out a command and waits until nothing moves, or the engine has run for a few seconds. */
export function perform(def: SetDefinition, scenario: Scenario, job: Job, command: Command): JobEvent[] {
  const events = [...doCommand(def, scenario, job, command)];
  let running = 0;
  for (let waited = 0; waited * STEP < REST_LIMIT && isLive(def, job.sim); waited += 1) {
    if (job.sim.engine.running) running += 1;
    if (running * STEP > RUNNING_WATCH) break;
    events.push(...advance(def, job, 1));
  }
  return events;
}
