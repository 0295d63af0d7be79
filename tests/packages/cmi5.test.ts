import { createRequire } from 'node:module';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { LmsReport } from '../../src/packages/lms.ts';
import { type Call, cmi5System, type Launch } from './cmi5Stub.ts';

// Statements are held against the package @learninglocker/xapi-validation: code that is not ours.
const { default: faultsOf } = createRequire(import.meta.url)('@learninglocker/xapi-validation') as {
  default: (statement: unknown) => readonly unknown[];
};

vi.stubGlobal('self', globalThis);
const { isCmi5, openCmi5 } = await import('../../src/packages/cmi5.ts');

const report: LmsReport = { total: 91.3, passed: true, passMark: 80, parts: [] };
const stopped: LmsReport = { ...report, passed: false };

/** A frame's own storage. */
function storage(): Storage {
  const held = new Map<string, string>();
  return {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => void held.set(key, value),
    removeItem: (key: string) => void held.delete(key),
  } as unknown as Storage;
}

const open: { close: () => void }[] = [];
afterEach(() => {
  for (const one of open.splice(0)) one.close();
});
async function started(launch: Launch = {}) {
  const system = await cmi5System(launch);
  open.push(system);
  const address = `http://127.0.0.1/work-1.html?${system.query}`;
  const frame = storage();
  return { system, address, frame, unit: await openCmi5(address, frame) };
}
const verbs = (calls: readonly Call[]) => calls.flatMap(({ verb }) => (verb === undefined ? [] : [verb]));

describe('a unit under cmi5', () => {
  it('knows the address by which a system starts it', () => {
    expect(
      isCmi5('http://127.0.0.1/work-1.html?endpoint=a&fetch=b&actor=c&activityId=d&registration=e'),
    ).toBe(true);
    expect(isCmi5('http://127.0.0.1/work-1.html?endpoint=a')).toBe(false);
  });

  it('asks in the order of the specification, begins with initialized, ends with terminated, and passes once', async () => {
    const { system, unit } = await started();
    expect(unit.keep('work so far', 10)).toBe(true);
    unit.report(report, 20);
    unit.report(report, 20);
    await unit.close(30);
    await unit.close(30);
    expect(system.calls.map(({ what }) => what)).toEqual([
      'token',
      'launchData',
      'preferences',
      'statement',
      'getState',
      'putState',
      'statement',
      'statement',
      'statement',
    ]);
    expect(verbs(system.calls)).toEqual(['initialized', 'completed', 'passed', 'terminated']);
    expect(unit.refusals).toEqual([]);
    expect(unit.returnTo).toBe('https://school.invalid/back');
  });

  it('says in each statement what the specification asks for', async () => {
    const { system, unit } = await started();
    unit.report(report, 20);
    await unit.close(30);
    const statements = system.calls.flatMap(({ statement }) => (statement === undefined ? [] : [statement]));
    const ids = statements.map((one) => (one as { id: string }).id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const one of statements) {
      expect(faultsOf(one)).toEqual([]);
      const { context, timestamp } = one as {
        timestamp: string;
        context: {
          registration: string;
          contextActivities: { category: { id: string }[] };
          extensions: Record<string, unknown>;
        };
      };
      expect(context.registration).toBe('5f2f9a1e-2a4b-4c3d-8e9f-0a1b2c3d4e5f');
      expect(context.contextActivities.category.map(({ id }) => id)).toContain(
        'https://w3id.org/xapi/cmi5/context/categories/cmi5',
      );
      expect(context.extensions['https://w3id.org/xapi/cmi5/context/extensions/sessionid']).toBe('sitting-1');
      expect(timestamp).toMatch(/Z$/);
    }
    const passed = statements[2] as {
      result: { success: boolean; score: { scaled: number }; duration: string };
    };
    expect(passed.result).toMatchObject({ success: true, score: { scaled: 0.913 } });
    expect(passed.result.duration).toMatch(/^PT/);
  });

  it('would have a wrong statement told by that validation', () => {
    expect(faultsOf({ verb: { id: 'no address' } })).not.toEqual([]);
  });

  it('fails work that was stopped, under the mastery score, and completes it', async () => {
    const { system, unit } = await started();
    unit.report(stopped, 20);
    await unit.close(30);
    expect(verbs(system.calls)).toEqual(['initialized', 'completed', 'failed', 'terminated']);
    const failed = system.calls.find(({ verb }) => verb === 'failed')?.statement as {
      result: { score: { scaled: number } };
    };
    expect(failed.result.score.scaled).toBeLessThan(0.8);
    expect(unit.refusals).toEqual([]);
  });

  it('does not pass what meets the work’s own mark but not the system’s', async () => {
    const { system, unit } = await started({ masteryScore: 0.95 });
    unit.report(report, 20);
    await unit.close(30);
    expect(verbs(system.calls)).toEqual(['initialized', 'completed', 'failed', 'terminated']);
  });

  it('is gone on with after a reload, though its token can be fetched only once', async () => {
    const { system, address, frame, unit } = await started();
    unit.keep('work so far', 10);
    await vi.waitFor(() => expect(system.state.text).toBe('work so far'));
    const again = await openCmi5(address, frame);
    expect(again.saved()).toBe('work so far');
    again.report(report, 20);
    await again.close(30);
    expect(system.calls.filter(({ what }) => what === 'token')).toHaveLength(1);
    expect(verbs(system.calls)).toEqual(['initialized', 'completed', 'passed', 'terminated']);
    // with the sitting over, the same address begins nothing
    await expect(openCmi5(address, frame)).rejects.toThrow('Failed to start');
  });

  it('reports nothing while it is only browsed or looked at again', async () => {
    for (const mode of ['Browse', 'Review'] as const) {
      const { system, unit } = await started({ mode });
      expect(unit.keep('x', 1)).toBe(false);
      unit.report(report, 20);
      await unit.close(30);
      expect(verbs(system.calls)).toEqual(['initialized', 'terminated']);
    }
  });

  it('tells what could not be sent while the system was away', async () => {
    const { system, unit } = await started();
    system.state.isAway = true;
    unit.report(report, 20);
    await unit.close(30);
    expect(unit.refusals.map((line) => line.split(':')[0])).toEqual(['completed', 'passed', 'terminated']);
  });
});
