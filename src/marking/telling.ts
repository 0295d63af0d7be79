import type { Finding } from '../jobs/card.ts';
import type { CauseId } from '../jobs/causes.ts';
import { evidence, findingsAsReceived } from '../jobs/evidence.ts';
import { entropy, REDUNDANT } from '../jobs/evidenceBelief.ts';
import { checkKinds } from '../jobs/evidenceChecks.ts';
import type { FindingCode } from '../jobs/findings.ts';
import { eventsOf } from './judges.ts';
import type { Moment, Story } from './story.ts';

/** How readily a set with a cause shows an outcome that the table holds against it, is silent about, or expects. Assumed. */
const AGAINST = 0.05;
const SILENT = 1;
const EXPECTED = 4;

function readiness(code: FindingCode, cause: CauseId): number {
  const known = evidence[code];
  if (known?.against.includes(cause)) return AGAINST;
  return known?.pointsAt.includes(cause) ? EXPECTED : SILENT;
}

/**
 * What a check with these outcomes is expected to tell about the causes that are open, bits: entropy before less
 * entropy after (Shannon 1948), each cause as likely, the outcomes' chances from the trade's table of reasoning.
 */
export function bitsOf(codes: readonly FindingCode[], open: readonly CauseId[]): number {
  if (open.length < 2 || codes.length === 0) return 0;
  const rows = open.map((cause) => {
    const row = codes.map((code) => readiness(code, cause));
    const all = row.reduce((sum, one) => sum + one, 0);
    return row.map((one) => one / all / open.length);
  });
  const chances = codes.map((_, at) => rows.reduce((sum, row) => sum + (row[at] ?? 0), 0));
  const joint = entropy(rows.flat());
  return Math.max(0, entropy(chances) + entropy(open.map(() => 1 / open.length)) - joint);
}

/** Whether a check with these outcomes could still tell something (0.01 bit or more) about the causes that are open. */
export const couldTell = (codes: readonly FindingCode[], open: readonly CauseId[]): boolean =>
  bitsOf(codes, open) >= REDUNDANT;

/** One moment at which something was found out about the set as it was received. */
export interface Look {
  readonly at: number;
  /** Number of events before it. */
  readonly order: number;
  readonly moment: Moment;
  readonly findings: readonly Finding[];
  /** Every finding that the same check might have given. */
  readonly outcomes: readonly FindingCode[];
  /** Whether it could tell anything about the causes that were open. */
  readonly told: boolean;
}

/** The outcomes of the check that a finding came of; empty for what is no check of the catalogue. */
export function outcomesOf({ check, code }: Finding): readonly FindingCode[] {
  const kind = checkKinds.find(({ source, codes }) => source === check && codes.some((one) => one === code));
  return kind?.codes ?? [];
}

/** The causes on the card that findings leave open; all of them when the findings contradict each other. */
export function openAfter(offered: readonly CauseId[], findings: readonly Finding[]): CauseId[] {
  const out = new Set(findings.flatMap(({ code }) => evidence[code]?.against ?? []));
  const open = offered.filter((cause) => !out.has(cause));
  return open.length > 0 ? open : [...offered];
}

const foundIn = ({ events }: Moment): Finding[] =>
  events.flatMap((event) => (event.kind === 'found' ? [event.finding] : []));

/** Every look at the set as received, in order. */
export function looksOf({ scenario, moments }: Pick<Story, 'scenario' | 'moments'>): Look[] {
  const all = moments.flatMap(foundIn);
  const count = findingsAsReceived({ findings: all }).length;
  const before: Finding[] = [];
  let seen = 0;
  const looks: Look[] = [];
  for (const moment of moments) {
    const findings = foundIn(moment).slice(0, count - seen);
    if (findings.length === 0) continue;
    const outcomes = [...new Set(findings.flatMap(outcomesOf))];
    const told = couldTell(outcomes, openAfter(scenario.causes, before));
    looks.push({ at: moment.at, order: moment.order, moment, findings, outcomes, told });
    // what could tell nothing excludes nothing: an idle check must not raise a mark by any road
    if (told) before.push(...findings);
    seen += findings.length;
  }
  return looks;
}

/** What the looks before a moment that could tell something have found. */
const toldBefore = ({ looks }: Story, order: number): Finding[] =>
  looks.filter((look) => look.told && look.order < order).flatMap(({ findings }) => findings);

/** The causes on the card that were open at a moment. */
export const openBefore = (story: Story, order: number): CauseId[] =>
  openAfter(story.scenario.causes, toldBefore(story, order));

/** The causes on the card that the findings made before a moment exclude. */
export function excludedBefore(story: Story, order: number): CauseId[] {
  const out = new Set(toldBefore(story, order).flatMap(({ code }) => evidence[code]?.against ?? []));
  return story.scenario.causes.filter((cause) => out.has(cause));
}

/** The last naming of a cause, with whether it was a true one; undefined when none was named. */
export function lastNaming(story: Story) {
  const namings = eventsOf(story, 'causeNamed');
  const last = namings[namings.length - 1];
  return last && { ...last, isRight: story.scenario.marking.causes.includes(last.event.cause) };
}
