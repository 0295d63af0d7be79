import { describe, expect, it } from 'vitest';
import { causeIds } from '../../src/jobs/causes.ts';
import { evidence } from '../../src/jobs/evidence.ts';
import { type EvidenceTable, simulateTable, tableTask } from '../../src/jobs/evidenceTable.ts';
import { faultKinds } from '../../src/jobs/faults.ts';
import type { FindingCode } from '../../src/jobs/findings.ts';
import { firstJob } from './bench.ts';

const { def } = firstJob();
const table: EvidenceTable = simulateTable({ ...tableTask(def, faultKinds()), severities: 4 });

const wordsOf = (outcome: string): string[] => outcome.split('+').map((word) => word.split(':')[0] ?? word);

/** Share of a cause's simulated sets in which some check shows a code; null where no kind of fault has that cause. */
function shown(code: string, cause: string): number | null {
  const rows = table.kinds.filter((kind) => kind.cause === cause).flatMap((kind) => kind.rows);
  if (rows.length === 0) return null;
  const hits = rows.filter((row) =>
    row.some((outcome, check) => wordsOf(table.checks[check]?.outcomes[outcome] ?? '').includes(code)),
  );
  return hits.length / rows.length;
}

const codes = Object.keys(evidence).filter((code): code is FindingCode =>
  table.checks.some(({ outcomes }) => outcomes.some((outcome) => wordsOf(outcome).includes(code))),
);

/**
 * The table of trade reasoning, by which marks are given, held against what the model shows for every kind of fault.
 * Each is the other's independent check: one is what mechanics say, the other what the equations do.
 */
describe('trade reasoning and simulation', () => {
  it('have every kind of cause and most of the table in common', () => {
    expect(codes.length).toBeGreaterThan(50);
    expect(causeIds.filter((cause) => shown('crankSpun', cause) === null)).toEqual([]);
  });

  it('agree on what is excluded: no finding is shown by a set with a cause that the finding excludes', () => {
    const wrong = codes.flatMap((code) =>
      (evidence[code]?.against ?? [])
        .filter((cause) => (shown(code, cause) ?? 0) > 0)
        .map((cause) => `${code}: ${cause}`),
    );
    expect(wrong).toEqual([]);
  });

  it('agree on what is plain: a finding that points at one cause alone is shown by sets that have it', () => {
    const wrong = codes.flatMap((code) => {
      const [only, ...others] = evidence[code]?.pointsAt ?? [];
      return only === undefined || others.length > 0 || (shown(code, only) ?? 0) > 0.25
        ? []
        : [`${code}: ${only}`];
    });
    expect(wrong).toEqual([]);
  });
});
