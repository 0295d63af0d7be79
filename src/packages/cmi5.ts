import Cmi5 from '@rusticisoftware/cmi5';
import { type Lms, scaledScore, scoreToTell } from './lms.ts';

/** Parameters of an address by which a system starts a unit (cmi5, section 8.1). */
const PARAMETERS = ['endpoint', 'fetch', 'actor', 'activityId', 'registration'];
/** Name of the document in which a unit's work is kept. */
const STATE = 'freestroke-work';
const VERSION = '1.0.3';
/** Longest text kept, characters: no standard sets a limit; a whole job takes a hundredth of this. */
const ROOM = 500_000;
const OK = 200;
const NOT_FOUND = 404;

/** Whether an address is one by which a system starts a unit of cmi5. */
export function isCmi5(address: string): boolean {
  const given = new URL(address).searchParams;
  return PARAMETERS.every((name) => given.has(name));
}

/** A sitting that this page had before it was loaded anew: its token can be fetched only once. */
interface Sitting {
  readonly auth: string;
  readonly began: number;
}
const placeOf = (unit: Cmi5): string => `freestroke-cmi5 ${unit.getFetch()}`;

function earlier(unit: Cmi5, storage: Storage): Sitting | null {
  try {
    const { auth, began } = JSON.parse(storage.getItem(placeOf(unit)) ?? 'null') ?? {};
    return typeof auth === 'string' && typeof began === 'number' ? { auth, began } : null;
  } catch {
    return null;
  }
}

/** Begins a sitting, or goes on with the one that a reloaded page had: then the system knows already that it began. */
async function begin(unit: Cmi5, storage: Storage): Promise<void> {
  const before = earlier(unit, storage);
  if (before === null) {
    await unit.start();
    try {
      storage.setItem(placeOf(unit), JSON.stringify({ auth: unit.getAuth(), began: Date.now() }));
    } catch {
      // a frame without storage cannot be loaded anew; everything else works
    }
    return;
  }
  unit.setAuth(before.auth);
  // what the library notes of a sitting while it starts one
  Object.assign(unit, { _fetchContent: {} });
  await unit.loadLMSLaunchData();
  await unit.loadLearnerPrefs();
  Object.assign(unit, { _initialized: true, _isActive: true, _durationStart: before.began });
}

function stateAddress(unit: Cmi5): string {
  const query = new URLSearchParams({
    stateId: STATE,
    activityId: unit.getActivityId(),
    agent: JSON.stringify(unit.getActor()),
    registration: unit.getRegistration(),
  });
  return `${unit.getEndpoint()}/activities/state?${query}`;
}

const headers = (unit: Cmi5, type: string): Record<string, string> => ({
  'X-Experience-API-Version': VERSION,
  Authorization: unit.getAuth(),
  'Content-Type': type,
});

async function readState(unit: Cmi5): Promise<string> {
  const answer = await fetch(stateAddress(unit), { headers: headers(unit, 'text/plain') });
  if (answer.status === NOT_FOUND) return '';
  if (answer.status !== OK) throw new Error(`kept work: ${answer.status}`);
  return answer.text();
}

/** Sends something even while the page is being left; throws what the system answered when it refused. */
async function put(unit: Cmi5, address: string, type: string, body: string): Promise<void> {
  const answer = await fetch(address, { method: 'PUT', headers: headers(unit, type), body, keepalive: true });
  if (!answer.ok) throw new Error(String(answer.status));
}

/** Opens a sitting in a system that speaks cmi5. Rejects when it cannot be begun: token used, system away. */
export async function openCmi5(address: string, storage: Storage): Promise<Lms> {
  const unit = new Cmi5(address);
  unit.includeSourceActivity(false);
  await begin(unit, storage);
  const kept = await readState(unit);
  const isNormal = unit.getLaunchMode() === 'Normal';
  const refusals: string[] = [];
  let isClosed = false;
  let isReported = false;
  let last: Promise<unknown> = Promise.resolve();
  // statements have an order: each waits for the one before
  const then = (what: string, work: () => Promise<unknown>): void => {
    last = last.then(work).catch((problem: unknown) => {
      refusals.push(`${what}: ${problem instanceof Error ? problem.message : String(problem)}`);
    });
  };
  return {
    kind: 'cmi5',
    room: ROOM,
    refusals,
    returnTo: unit.getReturnURL(),
    // after the page is gone the system calls the sitting abandoned, or the page is loaded anew and goes on
    outlastsPage: () => !isReported,
    saved: () => kept,
    keep(text) {
      if (isClosed || !isNormal || text.length > ROOM) return false;
      then('kept work', () => put(unit, stateAddress(unit), 'text/plain', text));
      return true;
    },
    report(report) {
      // a unit that is only browsed or looked at again reports nothing (cmi5, section 10.2)
      if (isClosed || isReported || !isNormal) return;
      isReported = true;
      // the system's own mark, where it was changed, is the one that a pass has to meet
      const passMark = 100 * (unit.getMasteryScore() ?? report.passMark / 100);
      const passed = report.passed && report.total >= passMark;
      const scaled = scaledScore(scoreToTell({ ...report, passed, passMark }));
      then('completed', () => unit.completed());
      then(passed ? 'passed' : 'failed', () => (passed ? unit.passed({ scaled }) : unit.failed({ scaled })));
    },
    close() {
      if (isClosed) return last.then(() => undefined);
      isClosed = true;
      then('terminated', () => {
        const statement = unit.terminatedStatement();
        const where = `${unit.getEndpoint()}/statements?${new URLSearchParams({ statementId: statement.id })}`;
        return put(unit, where, 'application/json', JSON.stringify(statement));
      });
      return last.then(() => storage.removeItem(placeOf(unit)));
    },
  };
}
