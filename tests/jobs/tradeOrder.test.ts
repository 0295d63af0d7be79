import { describe, expect, it } from 'vitest';
import { causeGroupIds } from '../../src/jobs/causes.ts';
import { ruledOut } from '../../src/jobs/evidence.ts';
import { withAccess } from '../../src/jobs/evidenceAccess.ts';
import { checkKinds } from '../../src/jobs/evidenceChecks.ts';
import { openJob, perform } from '../../src/jobs/job.ts';
import { areaOf, byTradeOrder, inArea } from '../../src/jobs/tradeOrder.ts';
import { firstJob } from './bench.ts';

const { def, scenario } = firstJob();

describe('what to check next by the order of the trade', () => {
  it('begins outside and with what costs nothing, and comes to the loose pump last', () => {
    // compression, air, fuel from tank to injector, window, pump: common practice, no source
    const job = openJob(def, scenario, scenario.seed);
    const names: string[] = [];
    for (let given = 0; given < 40; given += 1) {
      const { next } = byTradeOrder(job.card, scenario.causes);
      if (next === null) break;
      expect(names).not.toContain(next.id);
      names.push(next.id);
      const before = job.card.findings.length;
      const kind = checkKinds.find(({ id }) => id === next.id);
      for (const act of kind === undefined ? [] : withAccess(def, kind.acts))
        perform(def, scenario, job, act);
      // what cannot be done as the set stands is not gone on with here
      if (job.card.findings.length === before) break;
    }
    expect(names.slice(0, 2)).toEqual(['compression', 'air']);
    expect(names).toContain('window');
    const pump = names.findIndex((id) => areaOf(id) === 'pump');
    if (pump >= 0) expect(names.slice(pump).every((id) => areaOf(id) === 'pump')).toBe(true);
  });

  it('advises nothing when one cause is left, and only what can part the causes that are', () => {
    const one = byTradeOrder({ findings: [] }, ['tankEmpty']);
    expect(one).toEqual({ open: ['tankEmpty'], next: null });
    const two = byTradeOrder({ findings: [] }, ['tankEmpty', 'airInletBlocked']);
    expect(two.next?.id).toBe('air');
    expect(inArea(two.open, 'fuelSupply')).toBe(1);
    const job = openJob(def, scenario, scenario.seed);
    perform(def, scenario, job, { do: 'check', what: 'airElement' });
    const { open, next } = byTradeOrder(job.card, scenario.causes);
    expect(open).toEqual(scenario.causes.filter((cause) => !ruledOut(job.card).includes(cause)));
    expect(next?.id).toBe('compression');
  });

  it('knows where every check of the catalogue looks, and refuses one that it does not know', () => {
    for (const { id } of checkKinds) expect(causeGroupIds).toContain(areaOf(id));
    expect(() => areaOf('phaseOfTheMoon')).toThrow(RangeError);
  });
});
