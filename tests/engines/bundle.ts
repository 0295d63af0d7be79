import { join } from 'node:path';
import { build } from 'vite';

/** One classic script that leaves what a module exports in `freestroke`; the same text for every engine. */
export async function bundle(entry = join(import.meta.dirname, 'lines.ts')): Promise<string> {
  const root = join(import.meta.dirname, '..', '..');
  const built = await build({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      minify: false,
      target: 'es2022',
      lib: { entry, name: 'freestroke', formats: ['iife'] },
    },
  });
  const [first] = Array.isArray(built) ? built : [built];
  if (first === undefined || !('output' in first)) throw new Error('the bundler gave no output');
  const chunk = first.output.find((part) => part.type === 'chunk');
  if (chunk === undefined) throw new Error('the bundler gave no script');
  return chunk.code;
}
