import { useMemo } from 'react';
import type { Assignment } from '../session/assignment.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { methodical } from '../workers/methodical.ts';
import { runWorker } from '../workers/run.ts';
import { DebriefOf } from './DebriefPlace.tsx';
import type { Finished } from './openDebrief.ts';

/** Work that was set, done by the worker who goes by the findings alone, to be looked through like any other. */
export function PreviewOf({
  def,
  work,
  onLeave,
}: {
  def: SetDefinition;
  work: Assignment;
  onLeave: () => void;
}) {
  const finished = useMemo((): Finished => {
    const { scenario, mode, hints } = work;
    const { job } = runWorker(def, scenario, methodical, scenario.seed);
    const acts = job.log.flatMap(({ step, command }) => (command === null ? [] : [{ step, command }]));
    const terms = { mode, hints };
    return {
      work: { def, scenario, seed: scenario.seed, terms, acts, endStep: job.sim.step },
      set: undefined,
      from: null,
    };
  }, [def, work]);
  return <DebriefOf finished={finished} at={null} onLeave={onLeave} />;
}
