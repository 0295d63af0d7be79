import type { Law, LawInput } from '../../sim/laws/registry.ts';
import type { BookContents } from './book.ts';

/** One place of a curve; `outputs` is undefined where the law refuses the inputs. */
export interface Sample {
  x: number;
  outputs: Readonly<Record<string, number>> | undefined;
}

/** How much of an input's range a plot covers. */
export type Span = 'near' | 'whole';

const STEPS = 60;

/** Ends of the plot: the whole stated range, or from nothing to twice the working figure (one turn for angles). */
export function spanOf(input: LawInput, at: number, span: Span): [number, number] {
  const { min, max } = input;
  if (span === 'whole' || at === 0) return [min, max];
  const reach = input.unit === 'rad' && max - min > 2 * Math.PI ? Math.PI : 2 * Math.abs(at);
  const least = min < 0 ? -reach : 0;
  return [Math.max(min, least), Math.min(max, reach)];
}

/** The law at 61 even steps of one input with the others held; all in SI. */
export function sampleLaw(
  law: Law,
  runLaw: BookContents['runLaw'],
  base: Readonly<Record<string, number>>,
  vary: string,
  [from, to]: readonly [number, number],
): Sample[] {
  return Array.from({ length: STEPS + 1 }, (_, index) => {
    const x = index === STEPS ? to : from + (index * (to - from)) / STEPS;
    const result = runLaw(law.id, { ...base, [vary]: x });
    return { x, outputs: result.ok ? result.outputs : undefined };
  });
}

/** Unbroken stretches of one output as [x, y]; refused and endless values part them. */
export function stretchesOf(samples: readonly Sample[], output: string): [number, number][][] {
  const stretches: [number, number][][] = [];
  let open: [number, number][] | undefined;
  for (const { x, outputs } of samples) {
    const y = outputs?.[output];
    if (y === undefined || !Number.isFinite(y)) {
      open = undefined;
      continue;
    }
    if (open === undefined) {
      open = [];
      stretches.push(open);
    }
    open.push([x, y]);
  }
  return stretches;
}
