import { describe, expect, it } from 'vitest';
import { inProject } from '../../src/cli/files.ts';
import { pooled } from '../../src/cli/pool.ts';
import { piecesOf } from '../../src/cli/study.ts';
import { studyReport } from '../../src/workers/study/report.ts';
import { rowOf } from '../../src/workers/study/row.ts';

/** One job of each sort: outside the engine, in it, in the line, in the pump. */
const ids = ['reading-room-lamps', 'hoist', 'saw-bench', 'wool-press'];
const files = ids.map((id) => inProject(`scenarios/${id}.json`));

/**
 * What is asked of marks that can be defended, on a fixed part of the study (the terminal's `study` does all of it).
 * Known groups stand outside the table of marks: who slips more is worse by construction (VanLehn, Ohlsson and Nason
 * 1994 on simulated students, from memory).
 */
describe('the marks of learners whose level is known', () => {
  it('rank them, tell a few slips from many, let no exploit pass, and hold under other weights', () => {
    const lines = pooled({ kind: 'study', pieces: piecesOf(files, [1, 2]) }, 2, () => {});
    const rows = lines.flatMap((line) => rowOf(line) ?? []);
    expect(rows.length).toBe(lines.length);
    const { criteria } = studyReport(rows);
    expect(criteria.length).toBe(6);
    for (const { what, found, met } of criteria) expect(met, `${what}: ${found}`).toBe(true);
  }, 240_000);
});
