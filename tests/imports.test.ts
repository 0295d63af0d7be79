import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as manifest from '../package.json';
import { breachesIn, lengthBreach, type Packages, type SourceFile } from './houseRules.ts';

const ROOT = join(import.meta.dirname, '..');

const PACKAGES: Packages = {
  run: new Set(Object.keys(manifest.dependencies)),
  build: new Set(Object.keys(manifest.devDependencies)),
};

function filesUnder(folder: string): SourceFile[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') }));
}

function breaches(path: string, text: string): string[] {
  return breachesIn({ path, text }, PACKAGES);
}

describe('the house rules', () => {
  const source = filesUnder('src');

  it('find source files to hold', () => {
    expect(source.map(({ path }) => path)).toContain('src/sim/laws/maths.ts');
  });

  it('hold in every file of src', () => {
    expect(source.flatMap((file) => breachesIn(file, PACKAGES))).toEqual([]);
  });

  it('keep tests short too', () => {
    expect(filesUnder('tests').flatMap(lengthBreach)).toEqual([]);
  });
});

describe('the checker of the house rules', () => {
  const bad: [string, string, string][] = [
    ['src/sim/laws/a.ts', `import { x } from '../set/x.ts';`, 'laws may not import sim'],
    ['src/sim/laws/a.ts', `import sin from '@stdlib/math-base-special-sin';`, 'laws may not use the package'],
    ['src/sim/set/a.ts', `import type { Job } from '../../jobs/job.ts';`, 'sim may not import jobs'],
    ['src/sim/set/a.ts', `export { job } from '../../jobs/job.ts';`, 'sim may not import jobs'],
    ['src/sim/set/a.ts', `type Job = import('../../jobs/job.ts').Job;`, 'sim may not import jobs'],
    ['src/sim/set/a.ts', `export * from '../../jobs/job.ts';`, 'sim may not import jobs'],
    [
      'src/sim/set/a.ts',
      `import text from '../../../scenarios/x.json';`,
      'sim may not read scenarios/x.json',
    ],
    ['src/jobs/a.ts', `import { mark } from '../marking/mark.ts';`, 'jobs may not import marking'],
    ['src/jobs/a.ts', `import { readFileSync } from 'node:fs';`, 'jobs may not use node:fs'],
    ['src/marking/a.ts', `import { useState } from 'react';`, 'marking may not use React'],
    [
      'src/marking/a.ts',
      `const w = () => import('../workers/careful.ts');`,
      'marking may not import workers',
    ],
    [
      'src/workers/a.ts',
      `import { session } from '../session/session.ts';`,
      'workers may not import session',
    ],
    ['src/session/a.ts', `import { create } from 'zustand';`, 'session may not use React'],
    [
      'src/session/a.ts',
      `const w = new URL('../bench/w.ts', import.meta.url);`,
      'session may not import bench',
    ],
    ['src/session/A.tsx', `export const a = 1;`, 'session may not use React'],
    ['src/solids/a.ts', `import { Mesh } from 'three';`, 'solids may not use three'],
    ['src/solids/a.ts', `import { step } from '../sim/set/step.ts';`, 'solids may not import sim'],
    ['src/panels/A.tsx', `import { Canvas } from '@react-three/fiber';`, 'panels may not use three'],
    ['src/panels/A.tsx', `import { Bench } from '../bench/Bench.tsx';`, 'panels may not import bench'],
    ['src/panels/A.tsx', `import type { Props } from '../bench/Bench.tsx';`, 'panels may not import bench'],
    [
      'src/panels/A.tsx',
      `import { step } from '../sim/set/step.ts';`,
      'panels may import only types from sim',
    ],
    ['src/sim/set/commands.ts', `import { sin } from '../laws/maths.ts';`, 'may import only types'],
    ['src/bench/A.tsx', `import { Card } from '../panels/Card.tsx';`, 'bench may not import panels'],
    ['src/bench/A.tsx', `import fs from 'node:fs';`, 'bench may not use node:fs'],
    ['src/desk/A.tsx', `import { Bench } from '../bench/Bench.tsx';`, 'desk may not import bench'],
    ['src/cli/a.ts', `import { App } from '../app/App.tsx';`, 'cli may not import app'],
    ['src/app/App.tsx', `import { Vector3 } from 'three';`, 'app may not use three'],
    ['src/app/App.tsx', `import { help } from '../../tests/houseRules.ts';`, 'outside src'],
    ['src/app/App.tsx', `import { help } from '/src/app/help.ts';`, 'only relative paths'],
    ['src/app/App.tsx', `import { help } from 'no-such-package';`, 'not among the dependencies'],
    ['src/app/App.tsx', `import { build } from 'vite';`, 'not among the dependencies'],
    ['src/app/App.tsx', 'const load = (name: string) => import(name);', 'not a plain string'],
    ['src/tricks/a.ts', `export const a = 1;`, 'no folder that DEVELOPERS.md knows'],
    ['src/sim/Set.ts', `export const a = 1;`, 'should be named like'],
    ['src/sim/set/a.ts', `export const y = Math.sin(1);`, 'Math.sin'],
    ['src/sim/set/a.ts', `const { sin } = Math;`, 'Math as a value'],
    ['src/sim/set/a.ts', `export const y = Math['sin'](1);`, 'Math as a value'],
    ['src/jobs/a.ts', `export const y = Math.random();`, 'Math.random'],
    ['src/jobs/a.ts', `export const y = 3 ** 0.5;`, '** operator'],
    ['src/marking/a.ts', `export const now = () => Date.now();`, 'marking may not know Date'],
    ['src/session/a.ts', `export const now = () => performance.now();`, 'session may not know performance'],
    ['src/session/a.ts', `export const w = window;`, 'session may not know window'],
    ['src/jobs/a.ts', `export const get = () => fetch('x');`, 'jobs may not know fetch'],
    ['src/workers/a.ts', `export const s = (n: number) => n.toLocaleString();`, 'toLocaleString'],
    ['src/session/a.ts', `let count = 0;`, 'module-level let'],
    ['src/sim/set/a.ts', `export var count = 0;`, 'module-level var'],
    ['src/app/a.ts', 'export const a = 1;\n'.repeat(301), '301 lines'],
  ];

  it.each(bad)('refuses %s with %s', (path, text, expected) => {
    expect(breaches(path, text)).toContainEqual(expect.stringContaining(expected));
  });

  const good: [string, string][] = [
    ['src/sim/laws/maths.ts', `import sin from '@stdlib/math-base-special-sin';`],
    [
      'src/sim/set/a.ts',
      `import { sin } from '../laws/maths.ts';\nimport set from '../../../models/bench-set/set.json';`,
    ],
    [
      'src/sim/set/a.ts',
      `// Date, Math.sin and window in a comment or a 'string: Date' are no use of them\nexport const a = 'Date';`,
    ],
    ['src/sim/set/a.ts', `export const y = (o: { window: number }) => Math.sqrt(o.window) + Math.PI;`],
    ['src/sim/set/a.ts', `export const f = () => { let n = 0; n += 1; return n; };`],
    ['src/session/a.ts', `import { createStore } from 'zustand/vanilla';`],
    [
      'src/bench/A.tsx',
      `import type { State } from '../sim/set/state.ts';\nimport { Mesh } from 'three';\nimport 'react';`,
    ],
    [
      'src/panels/A.tsx',
      `import { useStore } from 'zustand';\nimport { session } from '../session/session.ts';`,
    ],
    ['src/panels/a.ts', `import { jointIds } from '../sim/set/commands.ts';`],
    ['src/app/A.tsx', `const Bench = () => import('../bench/Bench.tsx');\nimport './app.css';`],
    [
      'src/cli/a.ts',
      `import { readFileSync } from 'node:fs';\nimport { toJsonSchema } from '@valibot/to-json-schema';`,
    ],
  ];

  it.each(good)('has nothing against %s with %s', (path, text) => {
    expect(breaches(path, text)).toEqual([]);
  });

  it('says which line', () => {
    expect(breaches('src/jobs/a.ts', '\n\nexport const y = Math.random();')[0]).toMatch(
      /^src\/jobs\/a\.ts:3 /,
    );
  });
});
