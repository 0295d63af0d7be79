import type * as v from 'valibot';

/** One thing wrong with a file: where, what stands there, what should. */
export interface Problem {
  readonly path: string;
  readonly found: string;
  readonly expected: string;
}

/** A file read whole, or all that is wrong with it. */
export type Outcome<T> = { ok: true; value: T } | { ok: false; problems: Problem[] };

/** Largest file that is read, bytes. */
export const SIZE_LIMIT = 64 * 1024;
const SHOWN = 60;

const clip = (text: string): string => (text.length > SHOWN ? `${text.slice(0, SHOWN)}...` : text);

/** Any value in a few words, for a message. */
export function describeValue(value: unknown): string {
  if (typeof value === 'string') return clip(JSON.stringify(value));
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

/** One line for a person: `path: found ..., expected ...`. */
export function problemLine({ path, found, expected }: Problem): string {
  return `${path}: found ${found}, expected ${expected}`;
}

/** Bytes that a text takes in UTF-8 (bare engines have no TextEncoder). */
export function byteLength(text: string): number {
  let bytes = 0;
  for (const character of text) {
    const point = character.codePointAt(0) ?? 0;
    bytes += point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
  }
  return bytes;
}

const poison = new Set(Object.getOwnPropertyNames(Object.prototype).concat('prototype'));

/** Keys that could reach an object's prototype, anywhere in a parsed value; walks without recursion. */
export function poisonedKeys(value: unknown): Problem[] {
  const problems: Problem[] = [];
  const waiting: { path: string; value: unknown }[] = [{ path: '', value }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (typeof next.value !== 'object' || next.value === null) continue;
    for (const [key, inner] of Object.entries(next.value)) {
      const name = key === '' ? '""' : key;
      const path = next.path === '' ? name : `${next.path}.${name}`;
      if (poison.has(key)) problems.push({ path: clip(path), found: 'this key', expected: 'no such key' });
      else waiting.push({ path: path.length > 500 ? next.path : path, value: inner });
    }
  }
  return problems;
}

/** Parses JSON text within the size limit, refusing keys that could reach a prototype. */
export function parseJson(text: string): Outcome<unknown> {
  const refuse = (found: string, expected: string): Outcome<unknown> => ({
    ok: false,
    problems: [{ path: '(file)', found, expected }],
  });
  const bytes = byteLength(text);
  if (bytes > SIZE_LIMIT) return refuse(`${bytes} bytes`, `at most ${SIZE_LIMIT}`);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refuse(text.trim() === '' ? 'nothing' : 'text that is not JSON', 'one JSON object');
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse(describeValue(value), 'one JSON object');
  }
  const problems = poisonedKeys(value);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value };
}

const pathOf = (issue: v.BaseIssue<unknown>): string => {
  const keys = (issue.path ?? []).map((item) => (item.key === '' ? '""' : String(item.key)));
  return keys.length === 0 ? '(file)' : clip(keys.join('.'));
};

/** What a schema says of one value, in the words of a person. */
function problemOf(issue: v.BaseIssue<unknown>): Problem {
  const path = pathOf(issue);
  const expected = issue.expected ?? '';
  if (issue.type === 'strict_object' && expected === 'never') {
    return { path, found: 'an unknown key', expected: 'no such key' };
  }
  if (issue.type === 'strict_object' && expected.startsWith('"')) {
    return { path, found: 'nothing', expected: 'this key' };
  }
  // a schema's own message says more than its type where one was written
  const own = issue.message.startsWith('Invalid ') ? undefined : issue.message;
  return { path, found: describeValue(issue.input), expected: own ?? (expected || 'something else') };
}

/** A schema's complaints as problems, in the order of the file. */
export const problemsOf = (issues: readonly v.BaseIssue<unknown>[]): Problem[] => issues.map(problemOf);
