import { describe, expect, it } from 'vitest';
import { decisionHash, decisionsOf } from '../../src/jobs/decisionHash.ts';
import { advance, type Command, doCommand, type Job, openJob, perform } from '../../src/jobs/job.ts';
import { toolsFor } from '../../src/jobs/tools.ts';
import { copyOf, hashState } from '../../src/sim/set/snapshot.ts';
import { firstJob } from './bench.ts';

const { def, scenario } = firstJob();
const fresh = (): Job => openJob(def, scenario, 3);
const doAll = (job: Job, ...commands: Command[]) =>
  commands.flatMap((command) => perform(def, scenario, job, command));
const entry = (command: Command | null) => ({ step: 0, command, events: [] });

describe('a job', () => {
  it('opens with the hidden changes made and the given precautions in force', () => {
    const job = openJob(def, { ...scenario, place: { ...scenario.place, given: ['noFlame'] } }, 3);
    expect(job.sim.pump.travel).toBeCloseTo(0.0068, 9);
    expect(job.sim.place.noFlame).toBe(true);
    expect(job.sim.place.openAir).toBe(false);
  });

  it('writes what a check shows on the card, numbered, and in the log', () => {
    const job = fresh();
    doAll(job, { do: 'check', what: 'tank' }, { do: 'check', what: 'tank' });
    expect(job.card.findings.map(({ id }) => id)).toEqual(['tankHasFuel#1', 'tankHasFuel#2']);
    expect(job.log.map(({ command }) => command?.do)).toEqual(['check', 'check']);
    expect(job.log[0]?.events.map(({ kind }) => kind)).toEqual(['observed', 'found']);
  });

  it('refuses a tool that is not on the roll and leaves the set as it was', () => {
    const bare = { ...scenario, tools: scenario.tools.filter((tool) => tool !== 'spanner') };
    const job = fresh();
    const before = hashState(job.sim);
    const events = doCommand(def, bare, job, { do: 'loosen', joint: 'pumpNut1', to: 'slack', backup: false });
    expect(events).toEqual([{ kind: 'cardRefused', act: 'loosen', code: 'toolNotOnRoll', by: 'spanner' }]);
    expect(hashState(job.sim)).toBe(before);
  });

  it('takes no command after it was handed over', () => {
    const job = fresh();
    doAll(job, { do: 'handOver' });
    const length = job.log.length;
    expect(doCommand(def, scenario, job, { do: 'check', what: 'tank' })).toMatchObject([
      { code: 'jobEnded' },
    ]);
    expect(job.log.length).toBe(length);
  });

  it('goes on step by step as it does at once: doing, then advancing, gives the same state and log as performing', () => {
    const pull: Command = { do: 'pullCord', effort: 'firm', letGoAt: null };
    const [atOnce, stepwise] = [fresh(), fresh()];
    perform(def, scenario, atOnce, pull);
    doCommand(def, scenario, stepwise, pull);
    while (stepwise.sim.step < atOnce.sim.step) advance(def, stepwise, 1);
    expect(hashState(stepwise.sim)).toBe(hashState(atOnce.sim));
    expect(stepwise.log).toEqual(atOnce.log);
    expect(stepwise.card).toEqual(atOnce.card);
  });

  it('goes on from a copy exactly as from the original', () => {
    const first: Command[] = [
      { do: 'setPlace', what: 'loadIsolated', on: true },
      { do: 'holdDecompressor', held: true },
      { do: 'pullCord', effort: 'firm', letGoAt: 0.6 },
    ];
    const then: Command[] = [
      { do: 'turnFlywheel', to: 'compression' },
      { do: 'pullCord', effort: 'half', letGoAt: null },
    ];
    const straight = fresh();
    doAll(straight, ...first);
    const copy = JSON.parse(JSON.stringify(copyOf(straight)));
    doAll(straight, ...then);
    doAll(copy, ...then);
    expect(hashState(copy.sim)).toBe(hashState(straight.sim));
    expect(copy.log).toEqual(straight.log);
  });
});

describe('what a pull shows', () => {
  it('finds a slack union dry on a pump that is stuck, and wet on a sound one', () => {
    const look = (healthy: boolean) => {
      const sound = { ...scenario, changes: healthy ? [] : scenario.changes };
      const job = openJob(def, sound, 3);
      for (const command of [
        { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true },
        { do: 'moveThrottle', to: 1 },
        { do: 'holdDecompressor', held: true },
        { do: 'pullCord', effort: 'firm', letGoAt: null },
      ] as const)
        perform(def, sound, job, command);
      return job.card.findings.map(({ code }) => code);
    };
    expect(look(false)).toContain('noFuelAtUnion');
    expect(look(true)).toContain('fuelAtUnion');
  });

  it('writes compression felt only with the lever let go', () => {
    const job = fresh();
    doAll(job, { do: 'holdDecompressor', held: true }, { do: 'pullCord', effort: 'firm', letGoAt: null });
    expect(job.card.findings.map(({ code }) => code)).not.toContain('compressionFelt');
    doAll(
      job,
      { do: 'holdDecompressor', held: false },
      { do: 'turnFlywheel', to: 'compression' },
      { do: 'pullCord', effort: 'firm', letGoAt: null },
    );
    expect(job.card.findings.map(({ code }) => code)).toContain('compressionFelt');
  });
});

describe('what a hand on the flywheel shows', () => {
  const feel = (changes: typeof scenario.changes, held: boolean) => {
    const job = openJob(def, { ...scenario, changes }, 3);
    perform(def, scenario, job, { do: 'holdDecompressor', held });
    perform(def, scenario, job, { do: 'turnFlywheel', to: 'compression' });
    return job.card.findings.map(({ code }) => code);
  };

  it('is compression on a sound cylinder, none on one that blows by, and nothing with the lever held', () => {
    expect(feel([], false)).toEqual(['compressionFelt']);
    expect(feel([{ path: 'cylinder.ringOrifice', to: 3e-6 }], false)).toEqual(['compressionWeak']);
    expect(feel([], true)).toEqual([]);
  });
});

describe('the decision hash', () => {
  const acts: Command[] = [
    { do: 'moveThrottle', to: 1 },
    { do: 'tighten', joint: 'pumpNut1', torque: 22, backup: false },
    { do: 'grasp', part: 'plunger' },
    { do: 'letGo' },
  ];
  const of = (commands: (Command | null)[], step = 0) =>
    decisionHash({ log: commands.map((command) => ({ ...entry(command), step })) });

  it('does not depend on the clock, hand samples, jitter or the way of a drag', () => {
    const dragged: (Command | null)[] = [
      { do: 'moveThrottle', to: 0.3 },
      { do: 'moveThrottle', to: 0.99 },
      null,
      { do: 'tighten', joint: 'pumpNut1', torque: 22.1, backup: false },
      { do: 'grasp', part: 'plunger' },
      { do: 'handTo', travel: 0.001, twist: 0 },
      { do: 'handTo', travel: 0.002, twist: 0.1 },
      { do: 'letGo' },
    ];
    expect(of(dragged, 900)).toBe(of(acts));
  });

  it('depends on what was done, with how much, and in which order', () => {
    const others: Command[][] = [
      acts.slice(1),
      [...acts].reverse(),
      acts.map((act) => (act.do === 'tighten' ? { ...act, torque: 30 } : act)),
      acts.map((act) => (act.do === 'tighten' ? { ...act, joint: 'pumpNut2' } : act)),
    ];
    const hashes = [acts, ...others].map((list) => of(list));
    expect(new Set(hashes).size).toBe(hashes.length);
    expect(of(acts)).toMatch(/^[0-9a-f]{16}$/);
  });

  it('keeps card entries and drops nothing else', () => {
    const log = [
      entry({ do: 'strikeOut', cause: 'wornPair' }),
      entry({ do: 'handOver' }),
      entry({ do: 'wait', seconds: 7200 }),
    ];
    expect(decisionsOf(log)).toEqual([
      { do: 'strikeOut', cause: 'wornPair' },
      { do: 'handOver' },
      { do: 'wait', seconds: 7200 },
    ]);
  });
});

describe('tools', () => {
  it('says what an act takes beyond the bare hand', () => {
    expect(toolsFor({ do: 'tighten', joint: 'pipeAtPump', torque: 25, backup: true })).toEqual([
      'torqueWrench',
      'secondSpanner',
    ]);
    expect(toolsFor({ do: 'strike', target: 'camEnd', hammer: 'medium', speed: 2, block: 'wood' })).toEqual([
      'mediumHammer',
      'woodBlock',
    ]);
    expect(toolsFor({ do: 'check', what: 'leaks', with: 'finger' })).toEqual([]);
    expect(toolsFor({ do: 'pullCord', effort: 'firm', letGoAt: null })).toEqual([]);
  });
});
