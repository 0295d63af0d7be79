import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { migrated, SCENARIO_FORMAT } from '../../src/jobs/migrate.ts';
import { readScenario, scenarioFrom } from '../../src/jobs/scenario.ts';

const now = JSON.parse(readFileSync('scenarios/lambing-shed-lights.json', 'utf8'));

/** The first job as it stood in format 1: the fourteen causes of then. */
const first = {
  ...now,
  format: 'freestroke-scenario/1',
  causes: [
    'plungerStuckUp',
    'plungerStuckDown',
    'plungerStuckInRotation',
    'pinOutOfFork',
    'airInLine',
    'noFuelFromTank',
    'waterInFuel',
    'deliveryValveLeaking',
    'injectorNotOpening',
    'wornPair',
    'stopLeverAtStop',
    'lowCompression',
    'airInletBlocked',
    'decompressorNotClosing',
  ],
  marking: { ...now.marking, causes: ['noFuelFromTank'] },
};

describe('a scenario of an older format', () => {
  it('is read as one of today, with its causes in today’s words', () => {
    const read = readScenario(JSON.stringify(first));
    expect(read.ok && read.value.format).toBe(SCENARIO_FORMAT);
    expect(read.ok && read.value.marking.causes).toEqual([
      'tankEmpty',
      'tapShut',
      'ventBlocked',
      'filterBlocked',
    ]);
    expect(read.ok && read.value.causes).toContain('ringsWorn');
    expect(read.ok && read.value.causes).not.toContain('lowCompression');
  });

  it('keeps everything else, and is not itself changed', () => {
    const before = JSON.stringify(first);
    const { format: _format, causes: _causes, marking, ...rest } = Object(migrated(first));
    expect(JSON.stringify(first)).toBe(before);
    for (const [key, value] of Object.entries(rest)) expect(value).toEqual(now[key]);
    expect(marking.work).toEqual(now.marking.work);
  });

  it('that names old and new words side by side has each cause once', () => {
    const both = { ...first, causes: ['tapShut', 'noFuelFromTank', 'plungerStuckUp'] };
    const read = scenarioFrom(both);
    expect(read.ok && read.value.causes).toEqual([
      'tapShut',
      'tankEmpty',
      'ventBlocked',
      'filterBlocked',
      'plungerStuckUp',
    ]);
  });

  it('with mistakes in it is refused like any other', () => {
    const paths = (value: unknown) => {
      const read = scenarioFrom(value);
      return read.ok ? [] : read.problems.map(({ path }) => path);
    };
    expect(paths({ ...first, causes: 'all', seed: -1 })).toEqual(expect.arrayContaining(['causes', 'seed']));
    expect(paths({ ...first, causes: ['tapShut', 'tapShut'] })).not.toEqual([]);
    expect(paths({ ...first, marking: null })).toContain('marking');
    expect(paths({ format: 'freestroke-scenario/1' })).toContain('causes');
  });

  it('of a format that is not known yet is refused by its format', () => {
    const read = scenarioFrom({ ...now, format: 'freestroke-scenario/3' });
    expect(read.ok ? [] : read.problems).toEqual([
      { path: 'format', found: '"freestroke-scenario/3"', expected: `"${SCENARIO_FORMAT}"` },
    ]);
  });
});
