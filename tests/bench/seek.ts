import setText from '../../models/bench-set/set.json?raw';
import scenarioText from '../../scenarios/lambing-shed-lights.json?raw';
import { advance, doCommand, type Job, openJob, perform, termsOf } from '../../src/jobs/job.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario } from '../../src/jobs/scenario.ts';
import type { RecordedAct } from '../../src/session/recording.ts';
import { createSeeker, type Moment, type Work } from '../../src/session/seek.ts';
import { scatter } from '../../src/sim/set/random.ts';
import { STEP } from '../../src/sim/set/state.ts';
import { isLive } from '../../src/sim/set/time.ts';
import { workers } from '../../src/workers/workers.ts';
import type { Result } from './result.ts';
import { inTime } from './timing.ts';

function readOrThrow<T>(read: { ok: true; value: T } | { ok: false }): T {
  if (!read.ok) throw new Error('a file of the project cannot be read');
  return read.value;
}

const def = readOrThrow(readSet(setText));
const scenario = readOrThrow(readScenario(scenarioText));
const SEED = 1;
/** The careful worker's whole job, then the engine watched while it runs, so that half an hour has gone by. */
const WHOLE = 30 * 60;
const SEEKS = 400;

function actsOf(job: Job): RecordedAct[] {
  return job.log.flatMap(({ step, command }) => (command === null ? [] : [{ step, command }]));
}

/** Half an hour at one job: everything that the careful worker does but handing over, and pulls and running after it. */
function longWork(): Work {
  const job = openJob(def, scenario, SEED, termsOf('practice'));
  const script = workers.careful.work({ def, scenario, card: job.card });
  for (let next = script.next(); !next.done; ) {
    if (next.value.do === 'handOver') break;
    next = script.next(perform(def, scenario, job, next.value));
  }
  // what takes the model longest: the engine runs for five minutes, is stopped and pulled again
  for (let pull = 0; pull < 12 || job.sim.step * STEP < WHOLE; pull += 1) {
    doCommand(def, scenario, job, { do: 'moveStopLever', to: 'run' });
    doCommand(def, scenario, job, { do: 'holdDecompressor', held: true });
    doCommand(def, scenario, job, { do: 'pullCord', effort: 'firm', letGoAt: 0.6 });
    for (let n = 0; n < 2500 && isLive(def, job.sim); n += 1) advance(def, job, 1);
    doCommand(def, scenario, job, { do: 'moveStopLever', to: 'stop' });
    while (isLive(def, job.sim)) advance(def, job, 1);
  }
  return { def, scenario, seed: SEED, terms: termsOf('practice'), acts: actsOf(job), endStep: job.sim.step };
}

/** Seeking in half an hour of work and more: any of many moments drawn at random, the slowest of them counts. */
export function seekBench(): readonly Result[] {
  const work = longWork();
  const seeker = createSeeker(work);
  const begun = performance.now();
  seeker.whole();
  const laying = (performance.now() - begun) / 1e3;
  // what others do on the machine meanwhile is no part of a seek: the processor's time counts
  const times: number[] = [];
  const walls: number[] = [];
  for (let n = 0; n < SEEKS; n += 1) {
    const acts = Math.floor(scatter(n, 'acts', 0) * (work.acts.length + 1));
    const from = acts === 0 ? 0 : (seeker.after()[acts - 1] ?? 0);
    const to = work.acts[acts]?.step ?? work.endStep;
    const moment: Moment = { acts, step: from + Math.floor(scatter(n, 'step', 0) * (to - from + 1)) };
    const cpu = process.cpuUsage();
    const at = performance.now();
    seeker.at(moment);
    walls.push((performance.now() - at) / 1e3);
    const used = process.cpuUsage(cpu);
    times.push((used.user + used.system) / 1e6);
  }
  times.sort((a, b) => a - b);
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length;
  return [
    {
      title: 'seeking to any moment of a long job, slowest of 400',
      value: times[times.length - 1] ?? Number.NaN,
      unit: 's',
      target: 0.1,
      atMost: true,
      lines: [
        `  ${work.acts.length} acts, ${(work.endStep * STEP).toFixed(0)} s on the set's clock; processor, mean ${inTime(mean)}, 95 in 100 under ${inTime(times[Math.floor(times.length * 0.95)] ?? 0)}; slowest on the clock ${inTime(Math.max(...walls))}`,
        `  done again as a whole and laid up in ${inTime(laying)}`,
      ],
    },
  ];
}
