import type { SimCommand } from '../../sim/set/commands.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { copyState } from '../../sim/set/snapshot.ts';
import type { SimState } from '../../sim/set/state.ts';
import { runAct } from '../evidenceRun.ts';
import type { FindingDraft } from '../findings.ts';
import { findingText } from '../findingWords.ts';
import { openJob, perform } from '../job.ts';
import type { Given, Judgement, Subject } from './piece.ts';
import { findingsSince, hasTried, tried } from './tried.ts';

/** One way of finding out, as it is done on a copy of what was handed over. */
export interface Look {
  /** What to do, as it stands after "You could". */
  readonly name: string;
  readonly acts: readonly SimCommand[];
}

/** What one look gives, and whether a sound set gives something else. */
export interface Shown {
  readonly look: Look;
  readonly findings: readonly FindingDraft[];
  readonly tells: boolean;
}

/** Does a look's acts on a copy; returns all that was found. */
function tryLook(def: SetDefinition, state: Readonly<SimState>, look: Look): FindingDraft[] {
  const trial = copyState(state);
  return look.acts.flatMap((act) => runAct(def, trial, act).findings);
}

const codes = (findings: readonly FindingDraft[]): string =>
  [...new Set(findings.map(({ code }) => code))].sort().join(' ');

/** The same set with nothing wrong, brought to where the learner takes over. */
function soundOne(def: SetDefinition, subject: Subject): SimState {
  const scenario = { ...subject.scenario, changes: [] };
  const job = openJob(def, scenario, subject.seed);
  for (const command of subject.prepare) perform(def, scenario, job, command);
  return job.sim;
}

/** Tries every look on a copy of the subject and of a sound one. */
export function showAll(
  def: SetDefinition,
  subject: Subject,
  before: Readonly<SimState>,
  looks: readonly Look[],
): Shown[] {
  const sound = soundOne(def, subject);
  return looks.map((look) => {
    const findings = tryLook(def, before, look);
    return { look, findings, tells: codes(findings) !== codes(tryLook(def, sound, look)) };
  });
}

/** The answer that a sound set asks for. */
export const SOUND = 'sound';

/** What is wrong with the subject, as its scenario has it; SOUND where nothing is. */
export const truthOf = ({ scenario }: Subject): string =>
  scenario.changes.length === 0 ? SOUND : (scenario.marking.causes[0] ?? SOUND);

/** Says whether what was said is what it is, what shows it, and which telling look was not made. */
export function judgeReading(
  def: SetDefinition,
  { subject, before, job, answer }: Given,
  looks: readonly Look[],
  words: (id: string) => string,
): Judgement {
  const truth = truthOf(subject);
  const isTrue = answer === truth;
  const shown = showAll(def, subject, before, looks);
  const found = new Set(findingsSince(before, job).map(({ code }) => code));
  const isMade = ({ findings }: Shown) => findings.some(({ code }) => found.has(code));
  // what is named without a look at anything is named by luck
  const looked = shown.some(isMade) || hasTried(tried(job));
  const right = isTrue && looked;
  const telling = shown.filter(({ tells }) => tells);
  const saying = truth === SOUND ? shown.slice(0, 2) : telling;
  const proof = saying
    .map(({ findings }) => findings.map(findingText).join(' '))
    .filter((text) => text !== '');
  const missed = (truth === SOUND ? shown : telling)
    .filter((one) => !isMade(one))
    .map(({ look }) => look.name);
  return {
    right,
    says: [
      isTrue && !looked
        ? `True, but a guess: ${words(truth)}. You looked at nothing.`
        : `${right ? 'Right' : 'Not so'}: ${words(truth)}.`,
      ...(proof.length > 0 ? [`What shows it: ${[...new Set(proof)].slice(0, 3).join(' ')}`] : []),
      ...(missed.length > 0 && !right ? [`You did not ${missed.slice(0, 3).join(', nor ')}.`] : []),
      ...(missed.length > 0 && right ? [`It would have been surer had you also tried to ${missed[0]}.`] : []),
    ],
  };
}
