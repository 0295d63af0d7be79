import { mkdirSync, realpathSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { flawsOf } from '../solids/check.ts';
import { definition } from '../solids/definition.ts';
import { plainGlb } from '../solids/glb.ts';
import { buildSolids, massOf, type Solids } from '../solids/solids.ts';
import { stlOf } from '../solids/stl.ts';
import { readArgs } from './args.ts';
import type { CommandResult } from './law.ts';
import { failed, succeeded } from './result.ts';

const usage = [
  'npm run solids -- [--stl DIR] [--glb FILE]',
  '  --stl DIR    one STL file a part in millimetres, for a 3D printer',
  '  --glb FILE   all parts as named nodes in metres, for other programs',
];

/** Builds the pump's solids and writes them where asked; the arguments are those after `npm run solids --`. */
export async function solidsCommand(args: string[]): Promise<CommandResult> {
  if (args.length === 0 || args.includes('--help')) return succeeded(...usage);
  const read = readArgs(args, { stl: true, glb: true });
  if (!read.ok) return failed(read.problems);
  const { files, value } = read.value;
  if (files.length > 0)
    return failed([{ path: 'ARGUMENTS', found: files.join(' '), expected: 'only --stl DIR and --glb FILE' }]);
  const solids = await buildSolids(definition);
  const flaws = flawsOf(solids);
  if (flaws.length > 0) return { code: 1, out: [], err: flaws };
  try {
    const folder = value('stl');
    const file = value('glb');
    const stls = folder === undefined ? [] : writeStls(solids, folder);
    if (file !== undefined) writeFileSync(file, await plainGlb(solids));
    return succeeded(...stls, ...(file === undefined ? [] : [`${file}: ${solids.all.length} parts`]));
  } catch (error) {
    const found = error instanceof Error ? error.message : String(error);
    return failed([{ path: 'DIR or FILE', found, expected: 'a place that can be written to' }]);
  }
}

/** Writes one file a part; returns a line for each with its mass. */
function writeStls(solids: Solids, folder: string): string[] {
  mkdirSync(folder, { recursive: true });
  return solids.all.map((solid) => {
    writeFileSync(join(folder, `${solid.id}.stl`), stlOf(solid.id, solid.shape));
    return `${solid.id}.stl: ${(massOf(solids, solid) * 1000).toFixed(2)} g of ${solid.material}`;
  });
}

const calledAs = process.argv[1];
if (calledAs !== undefined && realpathSync(calledAs) === realpathSync(fileURLToPath(import.meta.url))) {
  const { code, out, err } = await solidsCommand(process.argv.slice(2));
  if (out.length > 0) process.stdout.write(`${out.join('\n')}\n`);
  if (err.length > 0) process.stderr.write(`${err.join('\n')}\n`);
  process.exitCode = code;
}
