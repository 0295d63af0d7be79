import { describe, expect, it } from 'vitest';
import type { Subject } from '../../../src/jobs/practice/piece.ts';
import { feelOf, torqueByFeel } from '../../../src/jobs/practice/torqueByFeel.ts';
import { def } from '../../panels/fixture.ts';
import { type Played, play, subjectsOf } from './played.ts';

const spannerOf = ({ spanner }: Subject) => {
  if (spanner === null) throw new Error('no spanner');
  return spanner;
};

/** One pull with a force, N, as the page makes it of what the spanner feels like. */
function pull({ go, subject, job }: Played, force: number, backup = true): void {
  const use = spannerOf(subject);
  const { torque } = feelOf(def, use, job.sim.assembly.joints[use.joint].torque, force);
  go({ do: 'tighten', joint: use.joint, torque, backup });
}

describe('torque by feel, the spanner', () => {
  const [subject] = torqueByFeel.make(def, 4, 1);
  if (subject === undefined) throw new Error('no joint');
  const use = spannerOf(subject);

  it('makes torque of force and length: 125 N at 20 cm is 25 N.m (definition of torque)', () => {
    const twenty = { ...use, joint: 'pipeAtPump', length: 0.2 } as const;
    expect(feelOf(def, twenty, 0, 125).torque).toBeCloseTo(25, 12);
  });

  it('never goes back on a second, weaker pull, and turns further the harder it is pulled', () => {
    expect(feelOf(def, use, 18, 10).torque).toBe(18);
    const turns = [0, 1, 5, 20, 60, 120, 200, 300].map((force) => feelOf(def, use, 0, force).turn);
    expect([...turns].sort((a, b) => a - b)).toEqual(turns);
  });

  it('goes soft where the thread yields: more turn, no more torque', () => {
    const { crush } = def.joints[use.joint];
    const [at, past, far] = [1, 1.3, 1.6].map((share) => feelOf(def, use, 0, (share * crush) / use.length));
    expect(far?.torque).toBe(past?.torque);
    expect((far?.turn ?? 0) - (past?.turn ?? 0)).toBeGreaterThan(1);
    expect(at?.torque).toBeCloseTo(crush, 9);
  });
});

describe('torque by feel, the judgement', () => {
  it('is passed by the pull that length and figure ask for, at every step, over twenty rounds', () => {
    for (const level of torqueByFeel.levels.keys()) {
      for (const subject of subjectsOf(torqueByFeel, level)) {
        const played = play(torqueByFeel, subject, level);
        const use = spannerOf(subject);
        // T = F l
        pull(played, def.joints[use.joint].torque / use.length);
        expect(played.judge(), `${level} ${subject.seed}`).toMatchObject({ right: true });
      }
    }
  });

  it('fails half and half as much again, with the pull it would have taken', () => {
    for (const subject of subjectsOf(torqueByFeel, 0)) {
      const use = spannerOf(subject);
      const aim = def.joints[use.joint].torque / use.length;
      for (const [share, word] of [
        [0.5, /50 in a hundred under/],
        [1.5, /50 in a hundred over/],
      ] as const) {
        const played = play(torqueByFeel, subject, 0);
        pull(played, share * aim);
        const { right, says } = played.judge();
        expect(right).toBe(false);
        expect(says.join(' ')).toMatch(word);
        expect(says.join(' ')).toContain(`${aim.toFixed(0)}\u202fN;`);
      }
    }
  });

  it('tells a holder that binds, a union that weeps or is crushed, and a body that nobody held', () => {
    const all = [1, 2, 3].flatMap((level) => subjectsOf(torqueByFeel, level));
    const of = (joint: string) => {
      const found = all.find(({ spanner }) => spanner?.joint === joint);
      if (found === undefined) throw new Error(`no ${joint}`);
      return play(torqueByFeel, found, 2);
    };
    const force = (played: Played, torque: number) => torque / spannerOf(played.subject).length;
    // 1.6 of the figure: the set's own law gives 400 N a unit past 1.3
    const holder = of('holder');
    pull(holder, force(holder, 1.6 * 38));
    expect(holder.judge().says.join(' ')).toMatch(/binds with 1[12]\d/);
    const slack = of('pipeAtInjector');
    pull(slack, force(slack, 6));
    expect(slack.judge().says.join(' ')).toMatch(/weeps/);
    const crushed = of('pipeAtInjector');
    pull(crushed, force(crushed, 70));
    expect(crushed.judge().says.join(' ')).toMatch(/body crushed/);
    const unheld = of('pipeAtPump');
    pull(unheld, force(unheld, 25), false);
    expect(unheld.judge()).toMatchObject({ right: false });
    expect(unheld.judge().says.join(' ')).toMatch(/second spanner/);
  });

  it('shows less at every step', () => {
    const shows = [0, 1, 2, 3].map((level) => torqueByFeel.make(def, 9, level)[0]?.spanner?.shows);
    expect(shows).toEqual(['torque', 'force', 'pull', 'turn']);
  });
});
