import { laws, runLaw } from '../sim/laws/registry.ts';

/** What a terminal command has to say: exit code, lines for standard output, lines for standard error. */
export type CommandResult = { code: number; out: string[]; err: string[] };

function inWords(entry: { name: string; symbol: string; unit: string }): string {
  const symbol = entry.symbol && entry.symbol !== entry.name ? ` ${entry.symbol}` : '';
  return `${entry.name}${symbol} [${entry.unit}]`;
}

function listing(): string[] {
  const lines: string[] = [];
  for (const law of laws) {
    lines.push(`${law.id}: ${law.title}`);
    for (const input of law.inputs) lines.push(`  in   ${inWords(input)} ${input.min} .. ${input.max}`);
    for (const output of law.outputs) lines.push(`  out  ${inWords(output)}`);
    lines.push(`  from ${law.source}`, '');
  }
  lines.push('SI units and radians throughout. law ID \'{"name": number, ...}\' runs one.');
  return lines;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function fail(...err: string[]): CommandResult {
  return { code: 2, out: [], err };
}

/**
 * The `law` command: no arguments lists the laws; an id and a JSON object of inputs runs one.
 *
 * Code 0 with the outputs as one line of JSON, or 2 with one sentence a problem.
 */
export function lawCommand(args: string[]): CommandResult {
  const [id, text, ...rest] = args;
  if (id === undefined) return { code: 0, out: listing(), err: [] };
  if (rest.length > 0) return fail(`law has ${args.length} arguments; expected an id and one JSON object.`);
  let inputs: unknown = {};
  try {
    inputs = JSON.parse(text ?? '{}');
  } catch (error) {
    const reason = error instanceof Error ? error.message : 'unreadable';
    return fail(`The inputs of ${id} are not JSON (${reason}); expected an object of numbers.`);
  }
  if (!isRecord(inputs)) {
    return fail(`The inputs of ${id} are ${JSON.stringify(inputs)}; expected an object of numbers.`);
  }
  const result = runLaw(id, inputs);
  if (!result.ok) return fail(...result.problems);
  return { code: 0, out: [JSON.stringify(result.outputs)], err: [] };
}
