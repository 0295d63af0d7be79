import { checkKinds } from '../jobs/evidenceChecks.ts';
import { questOf } from '../jobs/evidenceQuest.ts';
import { tableTask } from '../jobs/evidenceTable.ts';
import { faultKinds } from '../jobs/faults.ts';
import { causeText } from '../jobs/words.ts';
import type { Expectation } from '../workers/policy.ts';
import {
  bitsTable,
  type CausesReport,
  causesReport,
  checksWithTools,
  type PriorReport,
} from '../workers/policyReport.ts';
import { oneFile, readArgs } from './args.ts';
import { evidenceTable } from './evidence.ts';
import { loadJob } from './files.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

const minutes = (value: number): string => `${value.toFixed(1)} min`;
/** Two decimals; what rounds to nothing has no sign. */
const bitsText = (value: number): string => value.toFixed(2).replace(/^-(0\.00)$/, '$1');
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const priorTitles = { stored: 'a stored set', flat: 'every cause alike' } as const;

const expected = ({ labour, wrong, total }: Expectation): string =>
  `${minutes(total)} (labour ${minutes(labour)}, wrong name ${percent(wrong)})`;

const howBest: Record<string, string> = {
  exact: 'exact',
  information: 'greedy by information over cost; too large for the exact search',
  chance: 'greedy by chance of settling it over cost; too large for the exact search',
};

function priorLines(name: keyof typeof priorTitles, report: PriorReport): string[] {
  const { here } = report;
  const path = here.best.checks.map((id, at) => `${id} ${(here.best.bits[at] ?? 0).toFixed(2)}`);
  return [
    '',
    `Prior: ${priorTitles[name]}; ${report.open.toFixed(2)} bits open`,
    `  best next check    ${report.next ?? 'none: name the likeliest cause'}`,
    `  best policy        ${expected(report.best)}; ${howBest[report.best.by] ?? report.best.by}`,
    `  classic order      ${expected(report.classic)}`,
    `  half-skilled       ${expected(report.halfSkilled)}`,
    `  random             ${expected(report.random)}`,
    '  On this set:',
    `    best policy      ${minutes(here.best.labour)}, names ${here.best.named} at ${percent(here.best.share)}`,
    `      its checks, with the bits each told: ${path.join(', ') || 'none'}`,
    `    classic order    ${minutes(here.classic.labour)}, names ${here.classic.named} at ${percent(here.classic.share)}; ${here.classic.checks.join(', ')}`,
    `    half-skilled     ${expected(here.halfSkilled)}`,
    `    random           ${expected(here.random)}`,
  ];
}

/** Outcomes of one check, each with the causes of which it is to be expected. */
function likelihoodLines({ outcomes, causes }: CausesReport['likelihood'][number]): string[] {
  return outcomes.map((outcome, at) => {
    const shown = Object.entries(causes)
      .map(([cause, row]) => ({ cause, share: row[at] ?? 0 }))
      .filter(({ share }) => share >= 0.1)
      .sort((a, b) => b.share - a.share);
    const text =
      shown.length > Object.keys(causes).length / 2
        ? `${shown.length} of ${Object.keys(causes).length} causes`
        : shown.map(({ cause, share }) => `${cause} ${share.toFixed(2)}`).join(', ');
    return `      ${outcome}: ${text}`;
  });
}

function lines(title: string, report: CausesReport): string[] {
  const { stored, flat } = report.priors;
  const out = [
    `${title}: ${flat.shares.length} causes in question, ${report.kinds} kinds of fault simulated; table ${report.hash}`,
    `A wrong name costs ${report.wrongMinutes} min (assumed); every outcome has half a case added to its count.`,
    '',
    'Cause, prior share in a stored set and with every cause alike:',
    ...flat.shares.map(({ cause, share }, at) => {
      const text = `  ${percent(stored.shares[at]?.share ?? 0).padStart(7)} ${percent(share).padStart(7)}  ${cause}`;
      return `${text.padEnd(46)} ${causeText(cause)}`;
    }),
    '',
    'Check, minutes with access and putting back, bits in a stored set and with every cause alike; likelihoods:',
  ];
  flat.checks.forEach(({ id, minutes: cost, bits }, at) => {
    const kind = checkKinds.find((one) => one.id === id);
    const figures = `${cost.toFixed(1).padStart(6)} ${(stored.checks[at]?.bits ?? 0).toFixed(2).padStart(5)} ${bits.toFixed(2).padStart(5)}`;
    out.push(`${figures}  ${id}: ${kind?.name ?? ''}`);
    const likely = report.likelihood[at];
    if (likely) out.push(...likelihoodLines(likely));
  });
  return [...out, ...priorLines('stored', stored), ...priorLines('flat', flat)];
}

/** The causes x checks table in Markdown. */
function markdown(quest: Parameters<typeof bitsTable>[0]): string[] {
  const { causes, checks, bits, all } = bitsTable(quest);
  const row = (name: string, values: readonly number[]) =>
    `| ${name} | ${values.map(bitsText).join(' | ')} |`;
  return [
    `| bits | ${checks.join(' | ')} |`,
    `|---|${checks.map(() => '--:').join('|')}|`,
    ...causes.map((cause, at) => row(cause, bits[at] ?? [])),
    row('**all**', all),
  ];
}

/** `causes FILE [--json | --table]`: what every check would tell about the causes of a job, worked out by simulation. */
export function causesCommand(args: string[]): CommandResult {
  const read = readArgs(args, { json: false, table: false });
  if (!read.ok) return failed(read.problems);
  const file = oneFile(read.value);
  if (!file.ok) return failed(file.problems);
  const loaded = loadJob(file.value);
  if (!loaded.ok) return failed(loaded.problems);
  const { def, scenario } = loaded.value;
  const kinds = faultKinds();
  const inQuestion = kinds.some(({ cause }) => scenario.causes.includes(cause));
  if (!inQuestion) {
    const expectedCause = 'at least one cause that a kind of fault in models/bench-set/faults.json has';
    return failed([{ path: 'causes', found: scenario.causes.join(', '), expected: expectedCause }]);
  }
  const table = evidenceTable(tableTask(def, kinds));
  if (read.value.has('table')) {
    const checks = checksWithTools(def, scenario.tools);
    return succeeded(...markdown(questOf(table, { prior: 'flat', causes: scenario.causes, checks })));
  }
  const report = causesReport(def, scenario, table);
  if (read.value.has('json')) return succeeded(JSON.stringify(report, null, 2));
  return succeeded(...lines(scenario.title, report));
}
