import { loadavg } from 'node:os';
import { isMet, type Result, resultLines } from '../result.ts';
import { type Site, withSite } from './site.ts';
import { sizeBench } from './sizes.ts';
import { loadBench, speedBench } from './speed.ts';
import { heapBench, rendersBench, restBench } from './still.ts';

/* Benchmarks of the picture, in a real Chromium that draws by software; a word of the command line picks some. */

const benches: Readonly<Record<string, (site: Site) => Promise<readonly Result[]> | readonly Result[]>> = {
  sizes: sizeBench,
  speed: speedBench,
  load: loadBench,
  rest: async (site) => [await restBench(site)],
  renders: async (site) => [await rendersBench(site)],
  heap: heapBench,
};

const wanted = process.argv.slice(2);
await withSite(async (site) => {
  console.log(
    `Chromium ${site.browser.version()}, load ${loadavg()
      .map((x) => x.toFixed(1))
      .join(' ')}`,
  );
  for (const [name, bench] of Object.entries(benches)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    const results = await bench(site);
    for (const line of results.flatMap(resultLines)) console.log(line);
    if (!results.every(isMet)) process.exitCode = 1;
  }
});
