import { useEffect, useRef, useState } from 'react';
import type { EvidenceTable } from '../jobs/evidenceTable.ts';
import { problemLine } from '../jobs/problems.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import type { DealtJob } from '../workers/deal.ts';
import { type Dealing, dealAside } from './dealing.ts';
import { countOf, type Plan, type SetWork, worksOf } from './plan.ts';

/** Works out, or reads back, what every fault shows to every check; tell hears a share, 0..1. */
export type TableOf = (def: SetDefinition, tell: (share: number) => void) => Promise<EvidenceTable>;

/** How far the setting of work has come. */
export type Dealt =
  | { readonly at: 'nothing' }
  | { readonly at: 'working'; readonly what: string; readonly share: number }
  | { readonly at: 'refused'; readonly why: readonly string[] }
  | { readonly at: 'set'; readonly works: readonly SetWork[]; readonly pattern: Scenario };

/** Half of them within a quarter, and never nearer than a minute: the same as at the terminal. */
const BAND = 0.25;

/** Sets work by a plan, dealing on a thread where jobs are to be dealt. */
export function useDealing(def: SetDefinition, tableOf: TableOf) {
  const [dealt, setDealt] = useState<Dealt>({ at: 'nothing' });
  const running = useRef<Dealing | null>(null);
  const turn = useRef(0);
  useEffect(() => () => running.current?.stop(), []);

  const stop = () => {
    turn.current += 1;
    running.current?.stop();
    setDealt({ at: 'nothing' });
  };

  const dealJobs = async (plan: Plan, pattern: Scenario, mine: number): Promise<readonly DealtJob[]> => {
    const tell = (what: string, share: number) => {
      if (turn.current === mine) setDealt({ at: 'working', what, share });
    };
    const first = 'Running every fault through every check';
    tell(first, 0);
    const table = await tableOf(def, (share) => tell(first, share));
    if (turn.current !== mine) throw new Error('stopped');
    const count = countOf(plan);
    const then = 'Dealing jobs and having each one worked by an honest worker';
    tell(then, 0);
    const options = { count, seed: plan.seed, band: BAND, anyCause: plan.anyCause };
    running.current = dealAside({ def, pattern, table, options }, (done) => tell(then, done / count));
    const outcome = await running.current.dealt;
    if (!outcome.ok) throw new Error(outcome.problems.map(problemLine).join('\n'));
    return outcome.value.jobs;
  };

  const set = async (plan: Plan, pattern: Scenario): Promise<void> => {
    turn.current += 1;
    const mine = turn.current;
    try {
      const jobs = plan.kind === 'dealt' ? await dealJobs(plan, pattern, mine) : null;
      if (turn.current === mine) setDealt({ at: 'set', works: worksOf(plan, pattern, jobs), pattern });
    } catch (problem) {
      const why = problem instanceof Error ? problem.message : String(problem);
      if (turn.current === mine) setDealt({ at: 'refused', why: why.split('\n') });
    }
  };
  return { dealt, set, stop };
}
