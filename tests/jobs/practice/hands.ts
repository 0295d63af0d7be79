import { hear } from '../../../src/bench/sound/hear.ts';
import { heard } from '../../../src/bench/sound/heard.ts';
import { advance, doCommand, type Job, openJob, perform } from '../../../src/jobs/job.ts';
import type { Subject } from '../../../src/jobs/practice/piece.ts';
import { pointOf } from '../../../src/panels/gauge/traces.ts';
import { def } from '../../panels/fixture.ts';

/** What reaches a learner through each of the three channels while a pump is worked. */
export type Told = {
  /** Travel, m, and turn, rad, as the picture shows them. */
  watch: (readonly [number, number])[];
  /** Travel, mm, and force, N, as the hand gauge draws them. */
  gauge: (readonly [number, number])[];
  /** Names and levels of what sounds. */
  listen: (readonly [string, number])[];
};

export function open(subject: Subject): Job {
  const job = openJob(def, subject.scenario, subject.seed);
  for (const command of subject.prepare) perform(def, subject.scenario, job, command);
  return job;
}

/** A slow push as from the keys, up to all that a hand has, then a twist; what it told. */
export function work(subject: Subject, job: Job): Told {
  const told: Told = { watch: [], gauge: [], listen: [] };
  let before = heard(job.sim);
  const look = () => {
    const { shots, beds, now } = hear(def, before, job.sim, 0.02);
    before = now;
    told.watch.push([job.sim.pump.travel, job.sim.pump.turn]);
    const point = pointOf(job.sim);
    if (point !== null) told.gauge.push(point);
    for (const { sound, rings, bursts } of shots)
      told.listen.push([sound, Math.max(...[...rings, ...bursts].map(({ level }) => level))]);
    for (const { sound, level } of beds) told.listen.push([sound, level]);
  };
  const hand = (travel: number, twist: number) => {
    doCommand(def, subject.scenario, job, { do: 'handTo', travel, twist });
    advance(def, job, 1);
    look();
  };
  doCommand(def, subject.scenario, job, { do: 'grasp', part: 'plunger' });
  const from = job.sim.pump.travel;
  for (let i = 1; i <= 90; i += 1) hand(from + i * 1.8e-4, 0);
  for (let i = 1; i <= 25; i += 1) hand(job.sim.pump.travel, 0.012 * i);
  for (let i = 1; i <= 25; i += 1) hand(job.sim.pump.travel, -0.012 * i);
  doCommand(def, subject.scenario, job, { do: 'letGo' });
  return told;
}
