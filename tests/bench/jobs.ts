import setText from '../../models/bench-set/set.json?raw';
import scenarioText from '../../scenarios/lambing-shed-lights.json?raw';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario } from '../../src/jobs/scenario.ts';
import { record, replay } from '../../src/session/recording.ts';
import { hashState } from '../../src/sim/set/snapshot.ts';
import { startState } from '../../src/sim/set/start.ts';
import { STEP } from '../../src/sim/set/state.ts';
import { settle, step } from '../../src/sim/set/step.ts';
import { runWorker } from '../../src/workers/run.ts';
import { workers } from '../../src/workers/workers.ts';
import type { Result } from './result.ts';
import { inTime, timed } from './timing.ts';

function readOrThrow<T>(read: { ok: true; value: T } | { ok: false }): T {
  if (!read.ok) throw new Error('a file of the project cannot be read');
  return read.value;
}

const def = readOrThrow(readSet(setText));
const scenario = readOrThrow(readScenario(scenarioText));
const SEED = 1;

/** The careful worker's first job, recorded. */
const recording = record(def, scenario, runWorker(def, scenario, workers.careful, SEED).job, SEED);

function again(): void {
  const state = hashState(replay(def, scenario, recording).sim);
  if (state !== recording.stateHash) throw new Error(`replayed to ${state}, recorded ${recording.stateHash}`);
}

/** Replay of a whole job, all pulls included. */
export function replayBench(): readonly Result[] {
  const { wall, cpu } = timed(again, 20);
  const simulated = recording.endStep * STEP;
  const lines = [
    `  ${recording.acts.length} acts, ${simulated.toFixed(0)} s on the set's clock, processor ${inTime(cpu)}`,
  ];
  return [
    {
      title: "replay of the careful worker's first job",
      value: wall,
      unit: 's',
      target: 0.5,
      atMost: true,
      lines,
    },
    {
      title: 'replay, simulated over real time',
      value: simulated / wall,
      unit: 'times',
      target: simulated / 0.5,
      lines: [],
    },
  ];
}

/** Pulls of the cord on a set that gets no fuel, so that every one is cranking; mean over held and let go. */
export function crankingBench(): Result {
  const simulated = { steps: 0 };
  const pulls = () => {
    simulated.steps = 0;
    for (const letGoAt of [null, 0.6]) {
      const state = startState(def, SEED);
      state.place.loadIsolated = true;
      state.pump.pinInSlot = false;
      state.pump.turn = 0;
      for (let pull = 0; pull < 3; pull += 1) {
        step(def, state, [{ do: 'holdDecompressor', held: true }]);
        const before = state.step;
        step(def, state, [{ do: 'pullCord', effort: 'firm', letGoAt }]);
        settle(def, state, 10);
        simulated.steps += state.step - before;
      }
    }
  };
  const { wall, cpu } = timed(pulls, 60);
  const seconds = simulated.steps * STEP;
  return {
    title: 'cranking, simulated over real time',
    value: seconds / wall,
    unit: 'times',
    target: 500,
    lines: [`  ${seconds.toFixed(1)} s of pulls in ${inTime(wall)}, processor ${inTime(cpu)}`],
  };
}

/** Heap after collection, bytes. */
function heap(): number {
  if (globalThis.gc === undefined) throw new Error('run with --expose-gc');
  globalThis.gc();
  return process.memoryUsage().heapUsed;
}

/** Growth of memory over many replays, in kB for all of them; a hundred or more come first, unmeasured. */
export function memoryBench(replays: number): Result {
  for (let i = 0; i < Math.max(100, replays / 10); i += 1) again();
  const samples = [heap()];
  for (let i = 1; i <= replays; i += 1) {
    again();
    if (i % Math.max(1, Math.floor(replays / 10)) === 0) samples.push(heap());
  }
  const [first = 0] = samples;
  const growth = Math.max(0, ((samples.at(-1) ?? 0) - first) / 1e3);
  const all = samples.map((size) => (size / 1e6).toFixed(2)).join(' ');
  return {
    title: `growth of memory over ${replays} replays`,
    value: growth,
    unit: 'kB',
    // what one state weighs as text is some 10 kB: a leak of one a replay would be a thousand times this
    target: 200,
    atMost: true,
    lines: [`  heap in MB: ${all}`],
  };
}
