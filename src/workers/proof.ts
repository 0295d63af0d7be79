import type { CauseId } from '../jobs/causes.ts';
import { causeShares, firstBelief, type Quest, updated } from '../jobs/evidenceBelief.ts';
import { questOf } from '../jobs/evidenceQuest.ts';
import type { EvidenceTable } from '../jobs/evidenceTable.ts';
import { openJob, perform } from '../jobs/job.ts';
import type { Problem } from '../jobs/problems.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { SETTLED } from './policy.ts';
import { checksWithTools, likelihoods, observedOn } from './policyReport.ts';
import { runWorker } from './run.ts';
import { receive } from './stages/receive.ts';
import { handOver, startUp } from './stages/start.ts';
import type { Worker } from './worker.ts';
import { workers } from './workers.ts';

/** Two causes count as alike when no check's outcomes differ between them by more than this share of the cases. */
const ALIKE = 0.1;
const PULLS = 3;

/** What is wrong with a job as a job, and what is worth knowing; each with its proof. */
export interface Proof {
  readonly problems: Problem[];
  readonly notes: string[];
}

/** Pulls at a set as received, as one should and with nothing mended; true when it starts and runs as it ought to. */
export function startsAsReceived(def: SetDefinition, scenario: Scenario): boolean {
  const job = openJob(def, scenario, scenario.seed);
  const act = (command: Parameters<typeof perform>[3]) => perform(def, scenario, job, command);
  act({ do: 'moveThrottle', to: 1 });
  for (let pull = 0; pull < PULLS && !job.sim.engine.running; pull += 1) {
    act({ do: 'holdDecompressor', held: false });
    act({ do: 'turnFlywheel', to: 'compression' });
    act({ do: 'holdDecompressor', held: true });
    act({ do: 'pullCord', effort: 'firm', letGoAt: 0.6 });
  }
  if (!job.sim.engine.running) return false;
  act({ do: 'check', what: 'running' });
  act({ do: 'moveStopLever', to: 'stop' });
  act({ do: 'wait', seconds: 5 });
  const has = (code: string) => job.card.findings.some((finding) => finding.code === code);
  return has('runsWell') && has('stoppedByLever');
}

/** Greatest difference in the chance of any outcome of any check between two causes, 0..1, and the check. */
export function toldApart(quest: Quest, one: number, other: number): { by: string; share: number } {
  let best = { by: '', share: 0 };
  quest.checks.forEach(({ id }, check) => {
    const rows = likelihoods(quest, check);
    (rows[one] ?? []).forEach((chance, outcome) => {
      const share = Math.abs(chance - (rows[other]?.[outcome] ?? 0));
      if (share > best.share) best = { by: id, share };
    });
  });
  return best;
}

/** Pairs of causes that no check tells apart. */
export function alikePairs(quest: Quest): [CauseId, CauseId][] {
  return quest.causes.flatMap((one, at) =>
    quest.causes.flatMap((other, beside): [CauseId, CauseId][] =>
      beside > at && toldApart(quest, at, beside).share <= ALIKE ? [[one, other]] : [],
    ),
  );
}

/** Shares of the causes after every check that the job's tools allow, made on the job's own set. */
function afterEverything(quest: Quest, observed: ReadonlyMap<string, string>): number[] {
  let belief = firstBelief(quest);
  quest.checks.forEach(({ id, outcomes }, check) => {
    const outcome = outcomes.indexOf(observed.get(id) ?? '');
    if (outcome >= 0) belief = updated(quest, belief, check, outcome);
  });
  return causeShares(quest, belief);
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

/** Whether the true cause can be found: alike pairs, and what is believed when everything has been looked at. */
function provedFindable(def: SetDefinition, scenario: Scenario, table: EvidenceTable): Proof {
  const checks = checksWithTools(def, scenario.tools);
  const quest = questOf(table, { prior: 'flat', causes: scenario.causes, checks });
  const problems: Problem[] = [];
  const notes: string[] = [];
  const isTrue = (cause: CauseId) => scenario.marking.causes.includes(cause);
  for (const [one, other] of alikePairs(quest)) {
    const proof = `${one} and ${other}: all ${checks.length} checks give the same for both`;
    if (isTrue(one) !== isTrue(other)) {
      problems.push({
        path: 'causes',
        found: proof,
        expected: 'a check that tells the true cause from each other',
      });
    } else notes.push(proof);
  }
  const shares = afterEverything(quest, observedOn(def, scenario));
  const known = quest.causes
    .map((cause, at) => ({ cause, share: shares[at] ?? 0 }))
    .sort((a, b) => b.share - a.share);
  const right = known.filter(({ cause }) => isTrue(cause)).reduce((sum, { share }) => sum + share, 0);
  const top = known
    .slice(0, 3)
    .map(({ cause, share }) => `${cause} ${percent(share)}`)
    .join(', ');
  const simulated = scenario.marking.causes.every((cause) => quest.causes.includes(cause));
  if (!simulated)
    notes.push('a cause to be found has no kind of fault of its own, so that it could not be simulated');
  else if (scenario.marking.causes.length > 1)
    notes.push(`after every check: ${top} (one fault at a time is assumed)`);
  else if (right < SETTLED) {
    problems.push({
      path: 'marking.causes',
      found: `after every check ${top}`,
      expected: `the true cause at ${percent(SETTLED)} or more`,
    });
  } else notes.push(`after every check: ${top}`);
  return { problems, notes };
}

/** Mends nothing: makes the place safe, tries to start the set as it stands, and hands it over. */
const onlyStarts: Worker = {
  name: 'nobody',
  *work(view) {
    yield* receive(view);
    yield { do: 'moveStopLever', to: 'run' };
    yield { do: 'moveThrottle', to: 1 };
    yield* startUp(view);
    yield* handOver(view);
  },
};

/** Workers who go by what they find and know nothing else. */
const honest: readonly string[] = ['careful', 'methodical'];

/** The first honest worker who passes a job, if one does, and what each came to. */
export function provedBy(def: SetDefinition, scenario: Scenario): { by: string | null; outcomes: string[] } {
  const outcomes: string[] = [];
  for (const worker of Object.values(workers)) {
    if (!honest.includes(worker.name)) continue;
    const { sheet } = runWorker(def, scenario, worker, scenario.seed);
    const stops = sheet.stopWork.map(({ rule }) => rule).join(', ');
    const start = sheet.started ? 'started' : 'not started';
    outcomes.push(`${worker.name} ${sheet.total} of 100, ${start}${stops ? `, stopped for ${stops}` : ''}`);
    if (sheet.passed) return { by: worker.name, outcomes };
  }
  return { by: null, outcomes };
}

/**
 * Whether a sound file is a sound job: it does not start of itself, is not passed by doing nothing, is passed by a worker
 * who goes by the findings alone, and its cause can be told from the others that it offers.
 */
export function proveJob(def: SetDefinition, scenario: Scenario, table: EvidenceTable): Proof {
  const problems: Problem[] = [];
  const notes: string[] = [];
  if (startsAsReceived(def, scenario)) {
    const found = 'a set that starts, runs at its speed and stops by its lever with nothing mended';
    problems.push({ path: 'changes', found, expected: 'a fault that shows' });
  }
  const idle = runWorker(def, scenario, onlyStarts, scenario.seed).sheet;
  if (idle.started && idle.total >= scenario.marking.passMark) {
    problems.push({
      path: 'marking',
      found: `${idle.total} of 100 for starting it as it stands and handing it over`,
      expected: `less than the pass mark of ${scenario.marking.passMark}`,
    });
  }
  const passes = provedBy(def, scenario);
  if (passes.by) notes.push(`passed by the worker '${passes.by}': ${passes.outcomes.join('; ')}`);
  else {
    problems.push({
      path: '(job)',
      found: passes.outcomes.join('; '),
      expected: 'a worker who goes by the findings alone and passes',
    });
  }
  const findable = provedFindable(def, scenario, table);
  return { problems: [...problems, ...findable.problems], notes: [...notes, ...findable.notes] };
}
