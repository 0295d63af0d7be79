import type { JobCard } from '../jobs/card.ts';
import type { EvidenceTable } from '../jobs/evidenceTable.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { searchReading } from '../workers/policyDebrief.ts';

/** What this thread is asked for: one card's search beside the best one. */
export interface SearchOrder {
  readonly def: SetDefinition;
  readonly scenario: Scenario;
  readonly card: Pick<JobCard, 'findings' | 'named'>;
  readonly table: EvidenceTable;
}

addEventListener('message', ({ data }: MessageEvent<SearchOrder>) => {
  const { def, scenario, card, table } = data;
  postMessage(searchReading(def, scenario, card, table));
});
