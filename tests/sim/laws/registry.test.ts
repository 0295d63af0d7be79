import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lawCommand } from '../../../src/cli/law.ts';
import { runCheck } from '../../../src/sim/laws/check.ts';
import type { Law } from '../../../src/sim/laws/law.ts';
import { findLaw, laws, runLaw } from '../../../src/sim/laws/registry.ts';

const promised = [
  'cam-rise arc-cam tangent-cam contact-line contact-ball spring helix-stroke stroke-volume annular-leak',
  'density-at viscosity-at bulk-modulus free-air-modulus mixture-sound-speed closed-line-pressure bleed-strokes',
  'needle-opening orifice-flow spray-weber cylinder-volume polytropic-compression recoil-pull ignition-delay',
  'bond-hold strike slide-under-pulse direct-blow pin-bending soak bolt-torque',
]
  .join(' ')
  .split(' ');

/** Inputs that count or switch something and must be whole. */
const wholeInputs = new Set(['cam-rise law', 'strike outletEnd', 'strike supportOneSided']);

/** Inputs in range, with the ends of each range and the whole numbers that some inputs need drawn often. */
function inRange(law: Law): fc.Arbitrary<Record<string, number>> {
  const entries = law.inputs.map(({ name, min, max }) => {
    const anywhere = fc.double({ min, max, noNaN: true });
    const whole = fc.integer({ min: Math.ceil(min), max: Math.max(Math.ceil(min), Math.floor(max)) });
    const ends = fc.constantFrom(min, max, (min + max) / 2);
    const isSwitch = wholeInputs.has(`${law.id} ${name}`);
    return [name, isSwitch ? whole : fc.oneof({ weight: 4, arbitrary: anywhere }, ends)] as const;
  });
  return fc.record(Object.fromEntries(entries));
}

/** Inputs typical for the machine, near which every law must run; whole-range draws are mostly impossible. */
function nearMiddle(law: Law): fc.Arbitrary<Record<string, number>> {
  const entries = law.inputs.map(({ name, min, max }) => {
    const low = min > 0 ? min * (max / min) ** 0.3 : min;
    const high = min > 0 ? min * (max / min) ** 0.7 : max;
    return [name, fc.double({ min: low, max: high, noNaN: true })] as const;
  });
  return fc.record(Object.fromEntries(entries));
}

describe('registry of laws', () => {
  it('holds exactly the laws it promises, each under one id', () => {
    expect(laws.map((law) => law.id).sort()).toEqual([...promised].sort());
  });

  it('names every input and output once, with a unit, a sane range and a source', () => {
    for (const law of laws) {
      const names = [...law.inputs, ...law.outputs].map((entry) => entry.name);
      expect(new Set(names).size, law.id).toBe(names.length);
      for (const { name, unit, min, max } of law.inputs) {
        expect(unit, `${law.id} ${name}`).not.toBe('');
        expect(max, `${law.id} ${name}`).toBeGreaterThan(min);
      }
      expect(law.title.length, law.id).toBeGreaterThan(10);
      expect(law.source.length, law.id).toBeGreaterThan(10);
    }
  });

  it.each(laws.map((law) => ({ id: law.id, law })))(
    '$id gives finite numbers or a sentence for any inputs in range',
    ({ law }) => {
      const check = (inputs: Record<string, number>) => {
        const result = runLaw(law.id, inputs);
        if (!result.ok) {
          expect(result.problems.every((line) => /[.]$/.test(line) && line.length > 20)).toBe(true);
          return;
        }
        expect(Object.keys(result.outputs).sort()).toEqual(law.outputs.map((output) => output.name).sort());
        for (const [name, value] of Object.entries(result.outputs)) {
          expect(Number.isFinite(value), `${name} = ${value}`).toBe(true);
        }
      };
      const numRuns = law.id === 'strike' ? 25 : 300;
      fc.assert(fc.property(inRange(law), check), { numRuns });
      fc.assert(fc.property(nearMiddle(law), check), { numRuns });
    },
  );

  it('never reads anything but its inputs: the same inputs give the same bits', () => {
    for (const law of laws) {
      const [inputs] = fc.sample(inRange(law), { numRuns: 1, seed: 7 });
      expect(runLaw(law.id, inputs ?? {})).toEqual(runLaw(law.id, inputs ?? {}));
    }
  });

  it('says what is missing, unknown, out of range or of the wrong kind, all at once', () => {
    const result = runLaw('bolt-torque', { torque: -1, nutFactor: 'dry', diameter: 0.012, colour: 3 });
    expect(result.ok).toBe(false);
    const text = result.ok ? '' : result.problems.join('\n');
    expect(text).toContain('torque is -1; expected a number from 0');
    expect(text).toContain('nutFactor is "dry"');
    expect(text).toContain('clampWanted is missing');
    expect(text).toContain('colour is not an input of bolt-torque');
    expect(runLaw('perpetual-motion', {}).ok).toBe(false);
    expect(
      runLaw('bolt-torque', { torque: Number.NaN, clampWanted: 1, nutFactor: 0.2, diameter: 0.01 }).ok,
    ).toBe(false);
  });

  it('refuses inputs that are each in range but impossible together', () => {
    const law = findLaw('closed-line-pressure');
    expect(law).toBeDefined();
    const result = runLaw('closed-line-pressure', {
      pushed: 0,
      volume: 1e-6,
      air: 2e-6,
      restPressure: 1e5,
      bulk: 1.4e9,
      exponent: 1,
      targetPressure: 2e7,
    });
    expect(result).toMatchObject({ ok: false });
  });

  it('reports a check of an unknown output as failed', () => {
    const result = runCheck({
      id: 'none',
      law: 'soak',
      inputs: { shear: 1, freshShear: 1, soakTime: 1, residual: 1, seconds: 0, quickness: 1 },
      expected: { strength: 1 },
      tolerance: { relative: 1 },
      kind: 'derived',
      work: 'none',
      source: 'none',
    });
    expect(result.holds).toBe(false);
  });
});

describe('law command', () => {
  it('lists every law with its units and source', () => {
    const { code, out, err } = lawCommand([]);
    expect(code).toBe(0);
    expect(err).toEqual([]);
    const text = out.join('\n');
    for (const law of laws) {
      expect(text).toContain(`${law.id}: `);
      expect(text).toContain(law.source);
    }
    expect(text).toContain('pressureDrop dp [Pa]');
  });

  it('prints the outputs as JSON', () => {
    const inputs = JSON.stringify({ torque: 25, clampWanted: 1e4, nutFactor: 0.2, diameter: 0.012 });
    const { code, out } = lawCommand(['bolt-torque', inputs]);
    expect(code).toBe(0);
    expect(JSON.parse(out.join(''))).toEqual({
      clamp: 25 / (0.2 * 0.012),
      torqueForWanted: 0.2 * 1e4 * 0.012,
    });
  });

  it.each([
    [['no-such-law', '{}']],
    [['bolt-torque']],
    [['bolt-torque', '{']],
    [['bolt-torque', '[]']],
    [['bolt-torque', 'null']],
    [['bolt-torque', '{}', 'more']],
    [['bolt-torque', '{"torque":1,"clampWanted":1,"nutFactor":9,"diameter":0.01}']],
  ])('answers %j with code 2 and a sentence', (args) => {
    const { code, out, err } = lawCommand(args);
    expect(code).toBe(2);
    expect(out).toEqual([]);
    expect(err.length).toBeGreaterThan(0);
    for (const line of err) expect(line).toMatch(/expected/);
  });
});
