import { parseArgs } from 'node:util';
import type { Outcome, Problem } from '../jobs/problems.ts';

/** Flags of a command: true for one that takes a value. */
export type Flags = Readonly<Record<string, boolean>>;

export interface Args {
  readonly files: string[];
  readonly value: (flag: string) => string | undefined;
  readonly has: (flag: string) => boolean;
}

/** Reads the arguments of a command; unknown flags, doubled flags and missing values are all told at once. */
export function readArgs(args: string[], flags: Flags): Outcome<Args> {
  const options = Object.fromEntries(
    Object.entries(flags).map(([name, takesValue]) => [
      name,
      { type: takesValue ? ('string' as const) : ('boolean' as const) },
    ]),
  );
  const { tokens, positionals } = parseArgs({
    args,
    options,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const values = new Map<string, string>();
  const problems: Problem[] = [];
  const known = Object.keys(flags).map((name) => `--${name}`);
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const path = token.rawName;
    const takesValue = Object.hasOwn(flags, token.name) ? flags[token.name] : undefined;
    if (takesValue === undefined) {
      problems.push({ path, found: 'an unknown flag', expected: known.join(', ') || 'no flags' });
    } else if (values.has(token.name)) problems.push({ path, found: 'it twice', expected: 'once' });
    else if (takesValue && (token.value === undefined || token.value.startsWith('--'))) {
      problems.push({ path, found: 'no value', expected: 'a value' });
    } else if (!takesValue && token.value !== undefined) {
      problems.push({ path, found: 'a value', expected: 'none' });
    } else values.set(token.name, token.value ?? '');
  }
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    value: { files: positionals, value: (flag) => values.get(flag), has: (flag) => values.has(flag) },
  };
}

/** Exactly one file among the arguments. */
export function oneFile({ files }: Args): Outcome<string> {
  const [file, ...rest] = files;
  if (file !== undefined && rest.length === 0) return { ok: true, value: file };
  return { ok: false, problems: [{ path: 'FILE', found: `${files.length} files`, expected: 'one' }] };
}

/** A whole number from least to most written as digits, or the fallback when the flag is absent. */
export function wholeNumber(
  args: Args,
  flag: string,
  fallback: number,
  least: number,
  most: number,
): Outcome<number> {
  const text = args.value(flag);
  if (text === undefined) return { ok: true, value: fallback };
  const value = /^\d{1,12}$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return { ok: true, value };
  const expected = `a whole number from ${least} to ${most}`;
  return { ok: false, problems: [{ path: `--${flag}`, found: JSON.stringify(text), expected }] };
}
