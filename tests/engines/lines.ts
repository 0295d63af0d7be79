import checksFile from '../../models/bench-set/checks.json';
import setText from '../../models/bench-set/set.json?raw';
import { decisionHash } from '../../src/jobs/decisionHash.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario, type Scenario } from '../../src/jobs/scenario.ts';
import { type Recording1, record, replay } from '../../src/session/recording.ts';
import { type CheckKind, type LawCheck, runCheck } from '../../src/sim/laws/check.ts';
import * as maths from '../../src/sim/laws/maths.ts';
import type { SetDefinition } from '../../src/sim/set/definition.ts';
import { canonical, fingerprint, hashState } from '../../src/sim/set/snapshot.ts';
import { runWorker } from '../../src/workers/run.ts';
import type { WorkerName } from '../../src/workers/worker.ts';
import { workers } from '../../src/workers/workers.ts';

/*
 * What every JavaScript engine must agree on to the last bit, as lines of text. This file is bundled and run in
 * each of them, so it may use nothing but the language itself.
 */

const scenarioTexts = import.meta.glob<string>(['../../scenarios/*.json', '!**/*.schema.json'], {
  query: '?raw',
  import: 'default',
  eager: true,
});
const goldenTexts = import.meta.glob<string>('../golden/**/*.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The three jobs that are recorded, replayed and compared. */
const RECORDED: readonly WorkerName[] = ['careful', 'hasty', 'wrong-end'];
const SEED = 1;
/** Points at which each transcendental function is compared. */
const POINTS = 20_000;

/** A double's bits as 16 hexadecimal digits. */
function bits(x: number): string {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const half = (at: number) => view.getUint32(at).toString(16).padStart(8, '0');
  return half(0) + half(4);
}

function readOrThrow<T>(read: { ok: true; value: T } | { ok: false }, what: string): T {
  if (!read.ok) throw new Error(`${what} cannot be read`);
  return read.value;
}

const short = (path: string): string => path.split('/').at(-1) ?? path;

function recordedJobs(def: SetDefinition, scenario: Scenario): string[] {
  return RECORDED.map((name) => {
    const { job, sheet } = runWorker(def, scenario, workers[name], SEED);
    const again = replay(def, scenario, record(def, scenario, job, SEED));
    const marks = fingerprint(canonical(sheet));
    const replayed = fingerprint(canonical(again.log));
    return `job ${scenario.id} ${name}: state ${hashState(job.sim)} decisions ${decisionHash(job)} marks ${marks} replayed ${hashState(again.sim)} log ${replayed}`;
  });
}

function isRecording(value: unknown): value is Recording1 {
  return (
    typeof value === 'object' &&
    value !== null &&
    'format' in value &&
    value.format === 'freestroke-recording/1'
  );
}

/** Replays the recordings that are kept with the tests; each says itself what state it must come to. */
function goldenJobs(def: SetDefinition, scenarios: readonly Scenario[]): string[] {
  return Object.entries(goldenTexts).flatMap(([path, text]) => {
    const recording: unknown = JSON.parse(text);
    if (!isRecording(recording)) return [];
    const scenario = scenarios.find((one) => fingerprint(canonical(one)) === recording.scenarioHash);
    if (scenario === undefined) return [`golden ${short(path)}: no such scenario`];
    const state = hashState(replay(def, scenario, recording).sim);
    const same = state === recording.stateHash ? 'as recorded' : `not as recorded ${recording.stateHash}`;
    return [`golden ${short(path)}: state ${state} ${same}`];
  });
}

const kinds: Readonly<Record<string, CheckKind>> = {
  verified: 'verified',
  'from memory': 'from memory',
  'common practice': 'common practice',
  derived: 'derived',
};

function checkLines(): string[] {
  return checksFile.checks.map((check) => {
    const wanted: Record<string, number> = {};
    for (const [name, value] of Object.entries(check.expected)) {
      if (typeof value === 'number') wanted[name] = value;
    }
    const asked: Record<string, number> = {};
    for (const [name, value] of Object.entries(check.inputs)) {
      if (typeof value === 'number') asked[name] = value;
    }
    const whole: LawCheck = {
      ...check,
      inputs: asked,
      expected: wanted,
      // the values are compared here, not their distance from the book
      tolerance: { absolute: 0 },
      kind: kinds[check.kind] ?? 'derived',
    };
    const result = runCheck(whole);
    if (result.problems.length > 0) return `check ${check.id}: ${result.problems.join(' ')}`;
    return `check ${check.id}: ${result.lines.map(({ output, found }) => `${output} ${bits(found)}`).join(' ')}`;
  });
}

/** Every function over its range, as one fingerprint each, so that a difference shows where it comes from. */
function mathsLines(): string[] {
  const one = {
    acos: (u: number) => maths.acos(2 * u - 1),
    asin: (u: number) => maths.asin(2 * u - 1),
    atan2: (u: number) => maths.atan2(u - 0.5, 0.3 - u),
    cos: (u: number) => maths.cos(40 * u - 20),
    exp: (u: number) => maths.exp(60 * u - 30),
    ln: (u: number) => maths.ln(1e-3 + 1e3 * u),
    log10: (u: number) => maths.log10(1e-3 + 1e3 * u),
    pow: (u: number) => maths.pow(1e-3 + 50 * u, 3 - 5 * u),
    sin: (u: number) => maths.sin(40 * u - 20),
    tan: (u: number) => maths.tan(3 * u - 1.5),
  };
  return Object.entries(one).map(([name, at]) => {
    const values: string[] = [];
    for (let i = 0; i < POINTS; i += 1) values.push(bits(at((i + 0.5) / POINTS)));
    return `maths ${name}: ${fingerprint(values.join(''))}`;
  });
}

function allLines(): string[] {
  const def = readOrThrow(readSet(setText), 'models/bench-set/set.json');
  const scenarios = Object.entries(scenarioTexts).map(([path, text]) =>
    readOrThrow(readScenario(text), path),
  );
  const [first] = scenarios;
  if (first === undefined) throw new Error('no scenario');
  return [...recordedJobs(def, first), ...goldenJobs(def, scenarios), ...mathsLines(), ...checkLines()];
}

/** Everything to be compared, computed as the bundle is loaded. */
export const lines: readonly string[] = allLines();
