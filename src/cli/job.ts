import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { causesCommand } from './causes.ts';
import { checkCommand } from './check.ts';
import { criteriaCommand } from './criteria.ts';
import { dealCommand } from './deal.ts';
import { type CommandResult, lawCommand } from './law.ts';
import { markCommand } from './mark.ts';
import { packageCommand } from './package.ts';
import { playCommand } from './play.ts';
import { failed, succeeded } from './result.ts';
import { studyCommand } from './study.ts';
import { traceCommand } from './trace.ts';

const usage = [
  'npm run job -- COMMAND ...',
  '  check FILE... [--format-only]                    validates jobs and set definitions; proves that a job is one',
  '  play FILE --by careful|methodical|hasty|wrong-end|nobody [--seed N] [--record FILE] [--json]',
  '                                                   a scripted worker does the job; prints the marks',
  '  criteria FILE [--json]                           what a job is marked for, by the table that marks it',
  '  causes FILE [--json | --table]                   what each check would tell about the causes, by simulation',
  '  deal FILE --count N --seed N [--band PERCENT] [--any-cause] [--out FOLDER] [--json]',
  '                                                   jobs like this one, equally hard to find out',
  '  study [--seeds N] [--first SEED] [--threads N] [--csv FILE] | study FILE...',
  '                                                   every scripted learner does every job: do the marks tell them apart?',
  '  mark DIR --csv FILE [--threads N]                does every recording of a folder again and writes its marks',
  '  package --format scorm12|scorm2004|cmi5 --out FILE.zip [--mode MODE] SCENARIO...',
  '                                                   a unit for each job, for a learning system; build the program first',
  '  trace FILE --degrees 720 --csv                   crank angle by crank angle, the set turned at cranking speed',
  '  law [ID [JSON]]                                  lists the laws, or runs one',
];

const commands: ReadonlyMap<string, (args: string[]) => CommandResult> = new Map([
  ['check', checkCommand],
  ['play', playCommand],
  ['criteria', criteriaCommand],
  ['causes', causesCommand],
  ['deal', dealCommand],
  ['study', studyCommand],
  ['mark', markCommand],
  ['package', packageCommand],
  ['trace', traceCommand],
  ['law', lawCommand],
]);

/** Runs one terminal command; the arguments are those after `npm run job --`. */
export function runJobCommand(args: string[]): CommandResult {
  const [name, ...rest] = args;
  if (name === undefined || name === 'help' || name === '--help') return succeeded(...usage);
  const command = commands.get(name);
  if (command) return command(rest);
  return failed([
    { path: 'COMMAND', found: JSON.stringify(name), expected: [...commands.keys()].join(', ') },
  ]);
}

const calledAs = process.argv[1];
if (calledAs !== undefined && realpathSync(calledAs) === realpathSync(fileURLToPath(import.meta.url))) {
  // a reader that has seen enough (head, less) closes the pipe; that is no fault
  process.stdout.on('error', () => process.exit());
  const { code, out, err } = runJobCommand(process.argv.slice(2));
  if (out.length > 0) process.stdout.write(`${out.join('\n')}\n`);
  if (err.length > 0) process.stderr.write(`${err.join('\n')}\n`);
  process.exitCode = code;
}
