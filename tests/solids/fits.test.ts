import { describe, expect, it } from 'vitest';
import { moving, standing } from '../../src/solids/assembly.ts';
import { bakedParts } from '../../src/solids/bake.ts';
import { clashesBetween, clashesOf, flawsOf, gapsOf } from '../../src/solids/check.ts';
import { type Definition, definition } from '../../src/solids/definition.ts';
import { fitOf, fits, ROUNDING } from '../../src/solids/fits.ts';
import { buildSolids } from '../../src/solids/solids.ts';
import { solids } from './built.ts';

/** The definition with drawing dimensions of one part replaced. */
function changed<K extends keyof Definition['shapes']>(
  part: K,
  to: Partial<Definition['shapes'][K]>,
): Definition {
  const { shapes } = definition;
  return { ...definition, shapes: { ...shapes, [part]: { ...shapes[part], ...to } } };
}

describe('the assembled pump', () => {
  it('has no two parts in one place at any of the cam angles tried', () => {
    expect(clashesOf(solids)).toEqual([]);
  });

  it('is tried with every part that the catalogue has of it', () => {
    const placed = [...standing(solids), ...moving(solids, { camAngle: 0, turn: 0, valveLift: 0 })];
    const names = new Set(placed.map(({ name }) => name.split(' ')[0]));
    const missing = solids.all.map(({ id }) => id).filter((id) => !names.has(id));
    expect(missing).toEqual(['nozzle', 'needle']);
  });

  it('has every part that must meet another within its fit', () => {
    expect(gapsOf(solids)).toEqual([]);
  });

  it('has no fit of parts that there are not, and no overlap that a fit allows without need', () => {
    const ids = new Set(solids.all.map(({ id }) => id));
    for (const { parts, overlap } of fits) {
      expect(parts.filter((name) => !ids.has(name))).toEqual([]);
      expect(overlap ?? 1).toBeGreaterThan(ROUNDING);
    }
    expect(fitOf('flangeNut left', 'stud left')?.why).toBe('screwed on');
    expect(fitOf('plunger', 'holder')).toBeUndefined();
  });
});

describe('the build', () => {
  it('fails with a sentence when parts overlap: a cup too thick for its bore', async () => {
    const wide = changed('cup', { radius: 0.0158 });
    await expect(bakedParts(wide, 'assembly')).rejects.toThrow(
      /The parts pumpBody and cup|The parts cup and pumpBody/,
    );
  });

  it('fails with a sentence when parts do not meet: a valve spring that hangs over its valve', async () => {
    const { from } = definition.shapes.valveSpring;
    const hanging = await buildSolids(changed('valveSpring', { from: from + 1e-4, length: 0.0166 }));
    expect(gapsOf(hanging).join(' ')).toMatch(/The parts valveSpring and valve do not meet/);
  });

  it('fails with a sentence when a solid is not pierced as drawn: ports above the end of the barrel', async () => {
    const blind = changed('barrel', { portCentre: 0.07 });
    const flaws = flawsOf(await buildSolids(blind));
    expect(flaws.join(' ')).toMatch(/^The solid barrel has 1 ways through it, but 3 are drawn\.$/);
  });

  it('fails with a sentence when a surface does not close: a spring of no length', async () => {
    const none = changed('valveSpring', { length: Number.NaN });
    const flaws = await buildSolids(none).then(flawsOf, (error: unknown) => [String(error)]);
    expect(flaws.join(' ')).toMatch(/The solid valveSpring is not watertight/);
  });
});

describe('a clash', () => {
  it('is found between two blocks that share a corner, with the volume they share', () => {
    const { Manifold } = solids.shop.kernel;
    const a = { name: 'a', shape: Manifold.cube([0.01, 0.01, 0.01]) };
    const b = { name: 'b', shape: Manifold.cube([0.01, 0.01, 0.01]).translate(0.009, 0.009, 0.009) };
    const [clash] = clashesBetween([a, b], [a, b]);
    expect(clash?.volume).toBeCloseTo(1e-9, 15);
    const clear = { name: 'c', shape: b.shape.translate(0.001, 0, 0) };
    expect(clashesBetween([a, clear], [a, clear])).toEqual([]);
  });
});
