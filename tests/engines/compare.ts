/** Differences of two lists of lines, as sentences. */
export function differences(expected: readonly string[], found: readonly string[]): string[] {
  const length = Math.max(expected.length, found.length);
  const all = Array.from({ length }, (_, i) => i).filter((i) => expected[i] !== found[i]);
  return all.map((i) => `  expected ${expected[i] ?? 'nothing'}\n  found    ${found[i] ?? 'nothing'}`);
}

/** Complaints that need no second engine: a replay or a golden recording that ends in another state. */
export function complaintsOf(lines: readonly string[]): string[] {
  return lines.filter((line) => {
    const [, state, again] = /^job .*: state (\w+) .* replayed (\w+)/.exec(line) ?? [];
    return state !== again || /not as recorded|no such scenario/.test(line);
  });
}
