import { describe, expect, it } from 'vitest';
import { simulateTable, tableTask } from '../../src/jobs/evidenceTable.ts';
import { faultKinds } from '../../src/jobs/faults.ts';
import { openJob, perform } from '../../src/jobs/job.ts';
import { searchReading } from '../../src/workers/policyDebrief.ts';
import { firstJob } from '../jobs/bench.ts';

const { def, scenario } = firstJob();
const ids = ['stuckUp', 'stuckDown', 'tankEmpty', 'tapShut', 'ringsWorn', 'wornPair'];
const table = simulateTable({
  ...tableTask(
    def,
    faultKinds().filter(({ id }) => ids.includes(id)),
  ),
  severities: 6,
});

describe('a search beside the best one', () => {
  it('is told check by check, one made twice as costing time and telling nothing', () => {
    const job = openJob(def, scenario, 1);
    perform(def, scenario, job, { do: 'check', what: 'tank' });
    perform(def, scenario, job, { do: 'check', what: 'tank' });
    const { yours } = searchReading(def, scenario, job.card, table);
    expect(yours).toHaveLength(2);
    // by hand: fuel in the tank leaves five causes of six, log2(6/5), less the slips
    expect(yours[0]?.told).toBeGreaterThan(0.1);
    expect(yours[0]?.told).toBeLessThan(Math.log2(6 / 5));
    expect(yours[1]).toMatchObject({ told: 0, minutes: yours[0]?.minutes });
    expect(yours[0]?.findings).toEqual(['tankHasFuel#1']);
  });

  it('settles on the cause that the set has, and ends with one cause left', () => {
    const { best, settles, cause } = searchReading(def, scenario, openJob(def, scenario, 1).card, table);
    expect(scenario.marking.causes).toContain(settles);
    // nothing was named: the shares are the true cause's
    expect(cause).toBe(scenario.marking.causes[0]);
    expect(best.at(-1)).toMatchObject({ left: 1 });
    expect(best.at(-1)?.share).toBeGreaterThan(0.9);
    // a look that costs a minute comes before the pump is taken off (common practice, no source)
    const costs = best.map(({ minutes }) => minutes);
    expect(Math.min(...costs)).toBe(Math.min(...costs.slice(0, 3)));
  });

  it('tells the shares of the cause that was named, were it the wrong one', () => {
    const job = openJob(def, scenario, 1);
    perform(def, scenario, job, { do: 'check', what: 'tank' });
    perform(def, scenario, job, { do: 'nameCause', cause: 'tankEmpty', because: 'tankHasFuel#1' });
    const { cause, yours } = searchReading(def, scenario, job.card, table);
    expect(cause).toBe('tankEmpty');
    expect(yours.at(-1)?.share).toBeLessThan(1 / 6);
  });
});
