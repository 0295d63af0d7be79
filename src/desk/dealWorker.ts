import type { EvidenceTable } from '../jobs/evidenceTable.ts';
import { faultKinds } from '../jobs/faults.ts';
import type { Outcome } from '../jobs/problems.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { type Deal, type DealOptions, deal } from '../workers/deal.ts';

/** What this thread is asked for. */
export interface DealOrder {
  readonly def: SetDefinition;
  readonly pattern: Scenario;
  readonly table: EvidenceTable;
  readonly options: DealOptions;
}

/** What it tells: how many are dealt, and at last what came of it. */
export type DealNews = { readonly done: number } | { readonly dealt: Outcome<Deal> };

addEventListener('message', ({ data }: MessageEvent<DealOrder>) => {
  const { def, pattern, table, options } = data;
  const say = (news: DealNews) => postMessage(news);
  say({ dealt: deal(def, pattern, faultKinds(), table, options, (done) => say({ done })) });
});
