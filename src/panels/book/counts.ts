import type { CheckKind, LawCheck } from '../../sim/laws/check.ts';

export const kinds: readonly CheckKind[] = ['verified', 'from memory', 'common practice', 'derived'];

/** Words for a kind of check, as the reader meets them. */
export const kindWords: Readonly<Record<CheckKind, string>> = {
  verified: 'verified',
  'from memory': 'from memory',
  'common practice': 'common practice',
  derived: 'derived (regression)',
};

/** Checks by kind, how many of them are published, and how many different works those name. */
export function countChecks(checks: readonly LawCheck[]) {
  const of = (kind: CheckKind) => checks.filter((check) => check.kind === kind).length;
  const published = checks.filter(({ kind }) => kind !== 'derived');
  const worksOf = (some: readonly LawCheck[]) =>
    new Set(some.map(({ work }) => work).filter((work) => work !== 'none')).size;
  return {
    byKind: {
      verified: of('verified'),
      'from memory': of('from memory'),
      'common practice': of('common practice'),
      derived: of('derived'),
    } satisfies Record<CheckKind, number>,
    all: checks.length,
    published: published.length,
    works: worksOf(published),
    verifiedWorks: worksOf(checks.filter(({ kind }) => kind === 'verified')),
  };
}
