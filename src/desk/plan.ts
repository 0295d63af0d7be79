import type { modes, Scenario } from '../jobs/scenario.ts';
import type { Assignment } from '../session/assignment.ts';
import type { DealtJob } from '../workers/deal.ts';

export type Mode = (typeof modes)[number];

/** What the form says: the pattern, how jobs come of it, for whom, and how they are to be worked. */
export interface Plan {
  readonly name: string;
  readonly pattern: string;
  /** The job itself for everyone, or one like it for each. */
  readonly kind: 'same' | 'dealt';
  readonly anyCause: boolean;
  readonly seed: number;
  readonly count: number;
  /** Learners' codes, one a line; may be empty. */
  readonly codes: string;
  readonly mode: Mode;
  readonly hints: number;
  readonly passMark: number;
  readonly due: string;
}

export const MOST_WORKS = 60;

/** The learners' codes as they were typed, empty lines and repeats left out. */
export const codesIn = (text: string): string[] => [
  ...new Set(
    text
      .split('\n')
      .map((line) => line.trim().slice(0, 40))
      .filter((line) => line !== ''),
  ),
];

/** How many works are wanted. */
export const countOf = ({ kind, codes, count }: Pick<Plan, 'kind' | 'codes' | 'count'>): number => {
  const typed = codesIn(codes).length;
  return typed > 0 ? typed : kind === 'same' ? 1 : count;
};

/** What is wrong with a plan, in sentences; nothing when it can be carried out. */
export function problemsWith(plan: Plan): string[] {
  const count = countOf(plan);
  const problems: string[] = [];
  if (plan.name.trim() === '') problems.push('Give the work a name, so that you know it when it comes back.');
  if (plan.name.length > 60) problems.push('The name is longer than 60 characters.');
  if (!(count >= 1 && count <= MOST_WORKS))
    problems.push(`Between 1 and ${MOST_WORKS} works can be set at once; this asks for ${count}.`);
  if (!(Number.isInteger(plan.seed) && plan.seed >= 0 && plan.seed <= 4294967295))
    problems.push('The deal number must be a whole number from 0 to 4294967295.');
  if (!(plan.passMark >= 0 && plan.passMark <= 100)) problems.push('The pass mark must lie from 0 to 100.');
  return problems;
}

/** One work that is set: for whom, which job, and, where it was dealt, what is wrong with it and how hard it is. */
export interface SetWork {
  readonly who: string;
  readonly work: Assignment;
  readonly dealt: DealtJob | null;
}

/** Small letters and digits that nobody can foretell. */
function freshNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(10));
  return [...bytes].map((byte) => (byte % 36).toString(36)).join('');
}

/** The works of a plan, one for each learner. */
export function worksOf(plan: Plan, pattern: Scenario, dealt: readonly DealtJob[] | null): SetWork[] {
  const codes = codesIn(plan.codes);
  return Array.from({ length: countOf(plan) }, (_, at) => {
    const one = dealt?.[at] ?? null;
    const job = one?.scenario ?? pattern;
    const scenario = { ...job, marking: { ...job.marking, passMark: plan.passMark } };
    const work: Assignment = {
      name: plan.name.trim(),
      scenario,
      mode: plan.mode,
      hints: plan.mode === 'practice' ? plan.hints : 0,
      due: plan.due === '' ? null : plan.due,
      nonce: freshNonce(),
    };
    return { who: codes[at] ?? (countOf(plan) === 1 ? 'everyone' : `number ${at + 1}`), work, dealt: one };
  });
}
