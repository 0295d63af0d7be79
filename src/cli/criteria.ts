import { type CriteriaSheet, criteriaSheet } from '../marking/criteria.ts';
import { oneFile, readArgs } from './args.ts';
import { loadJob } from './files.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

const figure = (value: number): string => value.toFixed(1).replace(/\.0$/, '');
/** A cell of a Markdown table. */
const cell = (text: string): string => text.replaceAll('|', '\\|');

/** The sheet of criteria as Markdown. */
export function criteriaMarkdown({
  title,
  passMark,
  parts,
  stops,
  hints,
  notMarked,
}: CriteriaSheet): string[] {
  return [
    `# How “${title}” is marked`,
    '',
    `${passMark} of 100 is asked for, at least ${parts[0]?.least ?? 0} of 100 in each part by itself, the set running, and no act that stops the work.`,
    ...parts.flatMap((part) => [
      '',
      `## ${part.title.slice(0, 1).toUpperCase()}${part.title.slice(1)}: ${figure(part.worth)} of 100`,
      '',
      '| marks | what is asked for | judged | source |',
      '|---:|---|---|---|',
      ...part.criteria.map(
        ({ worth, reason, when, source }) =>
          `| ${figure(worth)} | ${cell(reason)} | ${cell(when)} | ${cell(source)} |`,
      ),
    ]),
    '',
    '## Acts that stop the work',
    '',
    'Any one of these stops the pass, whatever the rest earned.',
    '',
    ...stops.map(({ reason, source }) => `- ${reason} (${source})`),
    '',
    '## Help',
    '',
    `Free in guided work, none in assessed work. In practice a hint takes from the total: ${hints
      .map(({ level, cost }) => `level ${level}, ${cost}`)
      .join('; ')}. A step that the last level showed earns nothing.`,
    '',
    '## Not marked',
    '',
    ...notMarked.map((line) => `- ${line}`),
  ];
}

/** `criteria FILE [--json]`: what a job is marked for, as Markdown, or as data. */
export function criteriaCommand(args: string[]): CommandResult {
  const read = readArgs(args, { json: false });
  if (!read.ok) return failed(read.problems);
  const file = oneFile(read.value);
  if (!file.ok) return failed(file.problems);
  const loaded = loadJob(file.value);
  if (!loaded.ok) return failed(loaded.problems);
  const sheet = criteriaSheet(loaded.value.scenario);
  if (read.value.has('json')) return succeeded(JSON.stringify(sheet, null, 2));
  return succeeded(...criteriaMarkdown(sheet));
}
