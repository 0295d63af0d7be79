import type { CheckId } from '../sim/set/commands.ts';
import type { AdviceId } from './advice.ts';
import type { CauseId } from './causes.ts';
import type { FindingCode } from './findings.ts';
import type { HintLevel, HintSubject } from './hints.ts';

export type FindingValue = number | string | boolean;

/** One thing that was found out, written on the card as a code and numbers (SI); words are made from it later. */
export interface Finding {
  /** Unique on the card: code and running number. */
  readonly id: string;
  readonly code: FindingCode;
  readonly values: Readonly<Record<string, FindingValue>>;
  /** Model step at which it was found. */
  readonly at: number;
  /** What found it. */
  readonly check: FindingSource;
}

export type FindingSource = CheckId | 'pull' | 'flywheel' | 'byHand' | 'strike' | 'bleeding' | 'engine';

export type Verdict = 'fitForUse' | 'replace';

/** The job card: what was found, what was struck out, what was decided. */
export interface JobCard {
  findings: Finding[];
  struck: CauseId[];
  named: { cause: CauseId; because: string } | null;
  verdict: Verdict | null;
  advice: AdviceId[];
  written: boolean;
}

/** What a learner writes on the card. */
export type CardEntry =
  | { do: 'strikeOut'; cause: CauseId }
  | { do: 'restore'; cause: CauseId }
  | { do: 'nameCause'; cause: CauseId; because: string }
  | { do: 'judgePair'; verdict: Verdict }
  | { do: 'writeCard'; advice: AdviceId[] }
  | { do: 'handOver' };

/** What a learner does beside the set: writes on the card, or asks for help. */
export type CardCommand = CardEntry | { do: 'askHint'; level: HintLevel; about: HintSubject };

export type CardBlockCode =
  | 'jobEnded'
  | 'toolNotOnRoll'
  | 'notOffered'
  | 'alreadyStruck'
  | 'notStruck'
  | 'isStruck'
  | 'noSuchFinding'
  | 'noHints'
  | 'noDeeperHint';

export type CardEvent =
  | { kind: 'found'; finding: Finding }
  | { kind: 'causeStruck'; cause: CauseId }
  | { kind: 'causeRestored'; cause: CauseId }
  | { kind: 'causeNamed'; cause: CauseId; because: string }
  | { kind: 'pairJudged'; verdict: Verdict }
  | { kind: 'cardWritten'; advice: AdviceId[] }
  | { kind: 'handedOver' }
  /** point: what the hint was about then; isFree: it costs no marks. */
  | { kind: 'hintGiven'; level: HintLevel; about: HintSubject; point: string; isFree: boolean }
  | { kind: 'cardRefused'; act: string; code: CardBlockCode; by: string };

/** An empty card. */
export function blankCard(): JobCard {
  return { findings: [], struck: [], named: null, verdict: null, advice: [], written: false };
}

const refuse = (act: string, code: CardBlockCode, by: string): CardEvent[] => [
  { kind: 'cardRefused', act, code, by },
];

function strikeOut(card: JobCard, cause: CauseId): CardEvent[] {
  if (card.struck.includes(cause)) return refuse('strikeOut', 'alreadyStruck', cause);
  card.struck.push(cause);
  if (card.named?.cause === cause) card.named = null;
  return [{ kind: 'causeStruck', cause }];
}

function restore(card: JobCard, cause: CauseId): CardEvent[] {
  if (!card.struck.includes(cause)) return refuse('restore', 'notStruck', cause);
  card.struck = card.struck.filter((one) => one !== cause);
  return [{ kind: 'causeRestored', cause }];
}

function nameCause(card: JobCard, cause: CauseId, because: string): CardEvent[] {
  if (card.struck.includes(cause)) return refuse('nameCause', 'isStruck', cause);
  if (!card.findings.some((finding) => finding.id === because)) {
    return refuse('nameCause', 'noSuchFinding', because);
  }
  card.named = { cause, because };
  return [{ kind: 'causeNamed', cause, because }];
}

/** Writes on the card (changes it) and says what was written; offered: the causes that the job lists. */
export function writeOnCard(card: JobCard, command: CardEntry, offered: readonly CauseId[]): CardEvent[] {
  if ('cause' in command && !offered.includes(command.cause)) {
    return refuse(command.do, 'notOffered', command.cause);
  }
  switch (command.do) {
    case 'strikeOut':
      return strikeOut(card, command.cause);
    case 'restore':
      return restore(card, command.cause);
    case 'nameCause':
      return nameCause(card, command.cause, command.because);
    case 'judgePair':
      card.verdict = command.verdict;
      return [{ kind: 'pairJudged', verdict: command.verdict }];
    case 'writeCard':
      card.advice = [...command.advice];
      card.written = true;
      return [{ kind: 'cardWritten', advice: [...command.advice] }];
    case 'handOver':
      return [{ kind: 'handedOver' }];
  }
}
