import type { Finding, JobCard } from '../../jobs/card.ts';
import { checkKinds } from '../../jobs/evidenceChecks.ts';
import type { FindingCode } from '../../jobs/findings.ts';
import type { Command, JobEvent } from '../../jobs/job.ts';
import { scatter } from '../../sim/set/random.ts';
import type { Script, Worker, WorkerView } from '../worker.ts';
import { tooHard, wrongly } from './wrongly.ts';

/** What goes wrong when an act goes wrong; equally likely where they are possible. */
const slipKinds = ['left out', 'too late', 'wrong way', 'too hard', 'misread'] as const;

/** A code that the same check might have given instead, or null. */
function mistakenFor({ check, code }: Finding, draw: number): FindingCode | null {
  const kind = checkKinds.find(({ source, codes }) => source === check && codes.some((one) => one === code));
  const others = (kind?.codes ?? []).filter((one) => one !== code);
  return others[Math.floor(draw * others.length)] ?? null;
}

/** The card as somebody sees it who misread some findings. */
function cardAsRead(card: Readonly<JobCard>, misread: ReadonlyMap<string, FindingCode>): Readonly<JobCard> {
  const asRead = (finding: Finding): Finding => {
    const code = misread.get(finding.id);
    return code === undefined ? finding : { ...finding, code };
  };
  return {
    get findings() {
      return misread.size === 0 ? card.findings : card.findings.map(asRead);
    },
    get struck() {
      return card.struck;
    },
    get named() {
      return card.named;
    },
    get verdict() {
      return card.verdict;
    },
    get advice() {
      return card.advice;
    },
    get written() {
      return card.written;
    },
  };
}

/** The worker with slips: each act goes wrong with a chance of `rate`, in a way drawn by the seed. */
export function slipping(worker: Worker, rate: number, seed: number): Worker {
  return {
    name: `${worker.name} with slips`,
    *work(view) {
      const misread = new Map<string, FindingCode>();
      const script = worker.work({ ...view, card: cardAsRead(view.card, misread) });
      let next = script.next();
      for (let count = 0; !next.done; count += 1) {
        // other slips at every job: what is drawn depends on the job as well
        const draw = (what: string) => scatter(seed, `${what} at ${view.scenario.title}`, count);
        const isSlip = next.value.do !== 'handOver' && draw('slip') < rate;
        next = isSlip ? yield* slip(view, script, next.value, misread, draw) : script.next(yield next.value);
      }
    },
  };
}

type Next = IteratorResult<Command, void>;

/** One act that goes wrong; gives the act after it. */
function* slip(
  view: WorkerView,
  script: Script,
  command: Command,
  misread: Map<string, FindingCode>,
  draw: (what: string) => number,
): Generator<Command, Next, readonly JobEvent[]> {
  const first = Math.floor(draw('kind') * slipKinds.length);
  for (let tried = 0; tried < slipKinds.length; tried += 1) {
    const kind = slipKinds[(first + tried) % slipKinds.length];
    if (kind === 'left out') return script.next([]);
    if (kind === 'too late') return yield* tooLate(script, command);
    if (kind === 'misread') {
      const events = yield command;
      return script.next(events.map((event) => asMisread(event, misread, draw('misread'))));
    }
    const other = kind === 'wrong way' ? wrongly(view, command, draw('other')) : tooHard(command);
    if (other !== null) return script.next(yield other);
  }
  return script.next(yield command);
}

/** The act after it is done first. */
function* tooLate(script: Script, command: Command): Generator<Command, Next, readonly JobEvent[]> {
  const next = script.next([]);
  if (next.done || next.value.do === 'handOver') {
    yield command;
    return next;
  }
  const before = yield next.value;
  return script.next([...before, ...(yield command)]);
}

function asMisread(event: JobEvent, misread: Map<string, FindingCode>, draw: number): JobEvent {
  if (event.kind !== 'found') return event;
  const code = mistakenFor(event.finding, draw);
  if (code === null) return event;
  misread.set(event.finding.id, code);
  return { ...event, finding: { ...event.finding, code } };
}
