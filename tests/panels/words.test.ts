import { describe, expect, it } from 'vitest';
import { core } from '../../src/app/core.ts';
import type { JobEvent } from '../../src/jobs/job.ts';
import { stageNow, stages } from '../../src/jobs/stages.ts';
import { createLogBook } from '../../src/panels/log/logBook.ts';
import { eventText, isHarm, isRefusal } from '../../src/panels/words/events.ts';
import { createSession } from '../../src/session/session.ts';
import { careful } from '../../src/workers/careful.ts';
import { hasty } from '../../src/workers/hasty.ts';
import { runWorker } from '../../src/workers/run.ts';
import { wrongEnd } from '../../src/workers/wrongEnd.ts';
import { def, scenario } from './fixture.ts';

const runs = [careful, hasty, wrongEnd].map((worker) => runWorker(def, scenario, worker, scenario.seed).job);
const events: JobEvent[] = runs.flatMap((job) => job.log.flatMap((entry) => entry.events));
const newSession = () => createSession({ def, scenario, seed: scenario.seed, mode: 'guided' });

describe('what the set answers', () => {
  it('is told in whole sentences, without a code or a broken figure in them', () => {
    expect(events.length).toBeGreaterThan(100);
    for (const event of events) {
      const text = eventText(event, core);
      if (text === '') continue;
      expect(text, event.kind).toMatch(/^[^a-z].*[.!]$/);
      expect(text, event.kind).not.toMatch(/NaN|undefined|null|Infinity|\[object|[a-z][A-Z][a-z]/);
    }
  });

  it('never says nothing at all of an act of the careful worker', () => {
    const silent = (runs[0]?.log ?? []).filter(
      ({ command, events: all }) =>
        command !== null &&
        command.do !== 'pullCord' &&
        command.do !== 'turnFlywheel' &&
        command.do !== 'pushPlunger' &&
        all.every((event) => eventText(event, core) === ''),
    );
    expect(silent.map(({ command }) => command)).toEqual([]);
  });

  it('tells refusals and harm apart from the rest', () => {
    const [refused] = newSession().do({ do: 'remove', part: 'hose' });
    expect(refused !== undefined && isRefusal(refused)).toBe(true);
    expect(events.some(isHarm)).toBe(true);
    expect(events.filter(isHarm).some(isRefusal)).toBe(false);
  });
});

describe('the log of what was done', () => {
  it('answers an act that is not possible with the reason in words', () => {
    const session = newSession();
    const book = createLogBook(session, core);
    const close = book.open();
    session.do({ do: 'remove', part: 'hose' });
    close();
    expect(book.lines().map(({ text, tone }) => [text, tone])).toEqual([
      ['The hose clip is still tight.', 'refusal'],
    ]);
  });

  it('tells a check once, as the card has it', () => {
    const session = newSession();
    const book = createLogBook(session, core);
    const close = book.open();
    session.do({ do: 'check', what: 'tank' });
    close();
    expect(book.lines()).toHaveLength(1);
    expect(book.lines()[0]?.text).toMatch(/^On the card: /);
  });
});

describe('the stages of the job', () => {
  it('begin with the place and end, for the careful worker, with nothing left to do', () => {
    expect(stageNow(newSession().job())?.number).toBe(1);
    const [done] = runs;
    if (done === undefined) throw new Error('no run');
    expect(stages.filter((stage) => !stage.isDone(done)).map(({ title }) => title)).toEqual([]);
  });

  it('are not all done by the hasty worker', () => {
    const [, job] = runs;
    if (job === undefined) throw new Error('no run');
    expect(stageNow(job)).not.toBeNull();
  });
});
