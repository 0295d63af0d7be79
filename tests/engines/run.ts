import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bundle } from './bundle.ts';
import { complaintsOf, differences } from './compare.ts';
import { engines } from './engines.ts';
import { installPackages, isThere, missingPackages } from './install.ts';

/** Most differing lines that are shown for one engine. */
const SHOWN = 12;

const seconds = (since: number): string => `${((performance.now() - since) / 1000).toFixed(1)} s`;

async function main(): Promise<number> {
  const packages = missingPackages(engines);
  if (packages.length > 0) {
    const began = performance.now();
    const done = installPackages(packages);
    console.log(
      `Debian packages ${packages.join(', ')}: ${done ? `installed in ${seconds(began)}` : 'not installed'}`,
    );
  }
  const code = await bundle();
  const cache = join(import.meta.dirname, '..', '..', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'engines-'));
  const file = join(folder, 'lines.js');
  const tell = `(typeof print === 'function' ? print : console.log)(freestroke.lines.join('\\n'));`;
  writeFileSync(file, `${code}\n${tell}\n`);
  let failed = 0;
  let passed = 0;
  let skipped = 0;
  let reference: string[] | undefined;
  try {
    for (const engine of engines) {
      if (engine.needs !== null && !isThere(engine.needs.command)) {
        // On a build server a missing engine is a failure: nothing would ever run it otherwise.
        if (process.env.CI === 'true') failed += 1;
        else skipped += 1;
        console.log(`${engine.name}: not here (Debian's ${engine.needs.debian} brings it; needs root)`);
        continue;
      }
      const began = performance.now();
      const found = (await engine.run(code, file, folder)).trim().split('\n');
      reference ??= found;
      const wrong = [...complaintsOf(found), ...differences(reference, found)];
      if (wrong.length > 0) failed += 1;
      else passed += 1;
      console.log(`${engine.name}: ${found.length} lines, ${wrong.length} differences, ${seconds(began)}`);
      for (const line of wrong.slice(0, SHOWN)) console.log(line);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  for (const line of reference?.filter((one) => /^(job|golden) /.test(one)) ?? []) console.log(line);
  // a reference with nothing in it would agree with everything
  if (reference === undefined || reference.length < 100) failed += 1;
  console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  return failed === 0 ? 0 : 1;
}

process.exitCode = await main();
