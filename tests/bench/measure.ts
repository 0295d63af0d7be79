import { cpus, loadavg } from 'node:os';
import { closedLineBench } from './closedLine.ts';
import { crankingBench, memoryBench, replayBench } from './jobs.ts';
import { isMet, type Result, resultLines } from './result.ts';
import { revolutionBench } from './revolution.ts';
import { strikeBench } from './strike.ts';

const REPLAYS = Number(process.env.FREESTROKE_REPLAYS ?? 1000);

/** What the numbers were taken on: they mean little without it. */
function conditions(): string {
  const load = loadavg().map((x) => x.toFixed(1));
  return `Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, load ${load.join(' ')}`;
}

let missed = 0;
const tell = (result: Result) => {
  if (!isMet(result)) missed += 1;
  for (const line of resultLines(result)) console.log(line);
};

console.log(conditions());
for (const result of replayBench()) tell(result);
tell(crankingBench());
tell(revolutionBench());
tell(await strikeBench());
tell(closedLineBench());
tell(memoryBench(REPLAYS));
console.log(conditions());
process.exitCode = missed === 0 ? 0 : 1;
