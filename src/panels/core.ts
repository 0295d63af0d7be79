import type { AdviceId } from '../jobs/advice.ts';
import type { Finding, JobCard } from '../jobs/card.ts';
import type { CauseGroupId, CauseId } from '../jobs/causes.ts';
import type { CautionId, CautionWords } from '../jobs/cautions.ts';
import type { HintLevel, HintSubject } from '../jobs/hints.ts';
import type { Command, Job } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { Stage } from '../jobs/stages.ts';
import type { ToolId } from '../jobs/tools.ts';
import type { Outlook } from '../jobs/tradeOrder.ts';
import type { CriteriaSheet } from '../marking/criteria.ts';
import type { PartName } from '../marking/rule.ts';
import type { Session } from '../session/session.ts';
import type { SimCommand } from '../sim/set/commands.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import type { PumpPose } from '../sim/set/kinematics.ts';
import type { SlowStroke, StrokeSample } from '../sim/set/slowStroke.ts';
import type { SimState } from '../sim/set/state.ts';
import type { StrokeMarks } from '../sim/set/strokeMarks.ts';
import type { CardReading } from '../workers/policyCard.ts';
import type { SearchReading } from '../workers/policyDebrief.ts';

/** Where the page has every fault run through every check, on request and aside; read once it is done. */
export interface EvidenceDesk {
  subscribe(listener: () => void): () => void;
  /** How far it has come: null before it is asked or when it cannot, 0..1, 1 once it can be read. */
  share(): number | null;
  begin(definition: SetDefinition): void;
  read(
    scenario: Pick<Scenario, 'causes' | 'tools'>,
    card: Pick<JobCard, 'findings' | 'struck'>,
  ): CardReading | null;
  /** A search that is over beside the best one on the same set; null before the desk can be read. Takes seconds. */
  search(scenario: Scenario, card: Pick<JobCard, 'findings' | 'named'>): Promise<SearchReading> | null;
}

/**
 * Words and readings that live below the session and are handed to the panels by the app,
 * because the panels themselves know nothing beneath the session but its types.
 */
export interface Core {
  findingText(finding: Finding): string;
  causeText(cause: CauseId): string;
  causeGroupText(group: CauseGroupId): string;
  adviceText(advice: AdviceId): string;
  readonly adviceIds: readonly AdviceId[];
  cautionsFor(command: Command): readonly CautionId[];
  readonly cautionWords: Readonly<Record<CautionId, CautionWords>>;
  toolsFor(command: SimCommand): readonly ToolId[];
  readonly disclaimer: string;
  /** The stage that a job is at; null when all is done. */
  stageNow(
    job: Readonly<Job>,
  ): { readonly stage: Stage; readonly number: number; readonly of: number } | null;
  /** What the findings leave to be checked: worked out exactly once the evidence is there, by the trade's order before. */
  outlook(session: Pick<Session, 'scenario' | 'job'>): Outlook & { readonly isExact: boolean };
  /** How many of some causes lie in an area. */
  inArea(causes: readonly CauseId[], area: CauseGroupId): number;
  /** The deepest hint given on what the job is about now, and the marks that each level costs. */
  hintedSoFar(job: Readonly<Job>, about: HintSubject): number;
  readonly hintCosts: Readonly<Record<HintLevel, number>>;
  readonly partTitles: Readonly<Record<PartName, string>>;
  readonly parts: readonly PartName[];
  /** What a job is marked for, in plain words; tells which work it needed, so only for when it is over. */
  criteria(scenario: Scenario): CriteriaSheet;
  /** What each part counts for in the total. */
  readonly partWeights: Readonly<Record<PartName, number>>;
  /** Why an act stops the work, by the rule that says so. */
  stopReason(rule: string): string;
  pumpPose(definition: SetDefinition, sim: Readonly<SimState>): PumpPose;
  /** One stroke of the pump on a copy of a set, and moments of it. */
  readonly strokes: {
    look(definition: SetDefinition, sim: Readonly<SimState>): SlowStroke | null;
    marks(definition: SetDefinition, stroke: SlowStroke): StrokeMarks;
    at(stroke: SlowStroke, cam: number): StrokeSample;
    state(base: Readonly<SimState>, sample: StrokeSample): SimState;
  };
  /** What the findings of a card allow; absent where nothing is simulated. */
  readonly evidence?: EvidenceDesk;
}
