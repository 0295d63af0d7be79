import { bootstrapped } from '../marking/statistics/bootstrap.ts';
import { itemFigures, LEAST_WORKS, reliability } from '../marking/statistics/items.ts';
import type { Marked } from './markFile.ts';

type Work = Extract<Marked, { ok: true }>;

/** Outside these a rule tells little about who was marked by it (Ebel and Frisbie 1991, from memory). */
const TOO_HARD = 0.2;
const TOO_EASY = 0.95;
const TELLS = 0.2;
/** Draws of a bootstrap interval. */
const DRAWS = 300;

const tenth = (value: number): string => value.toFixed(1);
const two = (value: number): string => value.toFixed(2);

function linesOf(scenario: string, works: readonly Work[]): string[] {
  const marks = works.map(({ points }) => points.map(({ earned }) => earned));
  const totals = marks.map((row) => row.reduce((sum, one) => sum + one, 0));
  const mean = (drawn: readonly number[]) => drawn.reduce((sum, one) => sum + one, 0) / drawn.length;
  const middle = bootstrapped(totals, mean, DRAWS);
  const alpha = bootstrapped(marks, (drawn) => reliability(drawn).alpha, DRAWS);
  const rules = works[0]?.points ?? [];
  const little = itemFigures(marks).flatMap(({ difficulty, discrimination, itemRest }, at) => {
    const { rule = '', worth = 1 } = rules[at] ?? {};
    const share = difficulty / worth;
    const isFlagged = share < TOO_HARD || share > TOO_EASY || !(itemRest >= TELLS);
    const rest = Number.isNaN(itemRest) ? 'the same for all' : `with the rest ${two(itemRest)}`;
    return isFlagged
      ? [`  ${rule}: earned ${two(share)}, upper less lower ${two(discrimination / worth)}, ${rest}`]
      : [];
  });
  return [
    `${scenario}, ${works.length} works before help: mean ${tenth(middle.value)} (${tenth(middle.low)} to ${tenth(middle.high)}), alpha ${two(alpha.value)} (${two(alpha.low)} to ${two(alpha.high)}), standard error ${tenth(reliability(marks).sem)} of 100`,
    ...(little.length > 0 ? [' rules that tell little about these works:', ...little] : []),
  ];
}

/** What the marks of a folder say about the marks themselves, job by job; nothing of a job with fewer than 20 works. */
export function statisticsLines(marked: readonly Marked[]): string[] {
  const jobs = new Map<string, Work[]>();
  for (const one of marked) {
    // a job of the same name with other rules would not fit into the same table
    if (!one.ok) continue;
    const key = `${one.scenario} ${one.points.length}`;
    jobs.set(key, [...(jobs.get(key) ?? []), one]);
  }
  const many = [...jobs.values()].filter((works) => works.length >= LEAST_WORKS);
  return many.flatMap((works) => linesOf(works[0]?.scenario ?? '', works));
}
