import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { solidsCommand } from '../../src/cli/solids.ts';
import { catalogue } from '../../src/solids/catalogue.ts';

const folder = mkdtempSync(join(tmpdir(), 'solids-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('npm run solids', () => {
  it('writes an STL a part and one GLB', async () => {
    const stls = join(folder, 'new', 'stls');
    const glb = join(folder, 'pump.glb');
    const { code, out, err } = await solidsCommand(['--stl', stls, '--glb', glb]);
    expect(err).toEqual([]);
    expect(code).toBe(0);
    expect(out.length).toBe(catalogue.length + 1);
    expect(readdirSync(stls).sort()).toEqual(catalogue.map(({ id }) => `${id}.stl`).sort());
    expect(statSync(glb).size).toBeGreaterThan(100_000);
  });

  it.each([
    ['a flag that it does not know', ['--obj', 'x'], '--obj'],
    ['a flag without its value', ['--stl'], '--stl'],
    ['a word that belongs to no flag', ['here'], 'here'],
    ['a place that cannot be written', ['--glb', '/dev/null/parts/pump.glb'], '/dev/null/parts/pump.glb'],
  ])('answers %s with exit code 2 and a sentence', async (_, args, named) => {
    const { code, out, err } = await solidsCommand(args);
    expect(code).toBe(2);
    expect(out).toEqual([]);
    expect(err.join(' ')).toContain(named);
    expect(existsSync(join(folder, 'here'))).toBe(false);
  });

  it('tells how it is used when nothing is asked', async () => {
    const { code, out } = await solidsCommand([]);
    expect(code).toBe(0);
    expect(out.join(' ')).toContain('--stl DIR');
  });
});
