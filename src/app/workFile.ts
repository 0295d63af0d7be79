import { problemLine } from '../jobs/problems.ts';
import { type Scenario, scenarioFrom } from '../jobs/scenario.ts';
import { mark } from '../marking/mark.ts';
import { saveFile } from '../packages/saveFile.ts';
import { packAssignment, unpackAssignment } from '../session/assignment.ts';
import { type KeptHead, type KeptJob, resume } from '../session/keep.ts';
import { keptMarks } from '../session/keptMarks.ts';
import { type Recording, record, reproduced } from '../session/recording.ts';
import { LARGEST_FILE, type RecordedWork, readRecording, writeRecording } from '../session/recordingFile.ts';
import type { Session } from '../session/session.ts';
import { canonical, fingerprint } from '../sim/set/snapshot.ts';
import { jobFiles, ownJob } from './offers.ts';
import { fileOf } from './openDebrief.ts';
import { keptPlace, load } from './openWork.ts';
import { debriefHash, jobHash, setHash } from './useRoute.ts';

/** Where a file's work is found from now on, or why it was not taken in, in sentences. */
export type Taken = { readonly address: string } | { readonly refused: readonly string[] };

const refused = (...why: string[]): Taken => ({ refused: why });

/** A job's file, and the text of its link where an instructor or the file itself brought it. */
interface JobOfFile {
  readonly file: unknown;
  readonly set?: string;
}

/** The job that a recording was made on; null where this program does not have it. */
function jobOf({ recording, scenario, set }: RecordedWork): JobOfFile | null {
  if (set !== undefined) {
    const read = unpackAssignment(set, ownJob);
    return read.ok ? { file: read.value.scenario, set } : null;
  }
  const same = jobFiles.find((one) => {
    const read = scenarioFrom(one);
    return read.ok && fingerprint(canonical(read.value)) === recording.scenarioHash;
  });
  if (same !== undefined) return { file: same };
  if (scenario !== null) return { file: scenario, set: linkOf(recording, scenario) };
  const file = jobFiles.find(({ id }) => id === recording.scenarioId);
  return file === undefined ? null : { file };
}

/** A job that came inside the file, as a link from which it can be read again. */
const linkOf = ({ terms }: Recording, scenario: Scenario): string =>
  packAssignment(
    { name: scenario.title, scenario, mode: terms.mode, hints: terms.hints, due: null, nonce: 'fromafile' },
    null,
    ownJob,
  );

/**
 * Takes in a file: work that was saved, or a job that an instructor set. It is done again first and must come out as it
 * did; nothing is kept of a file that does not.
 */
export async function takeIn(file: Blob): Promise<Taken> {
  if (file.size > LARGEST_FILE)
    return refused(`The file has ${file.size} bytes; ${LARGEST_FILE} is the most.`);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const link = linkIn(bytes);
  if (link !== null) return { address: setHash(link) };
  const read = readRecording(bytes);
  if (!read.ok) return refused(...read.problems.map(problemLine));
  return keepRecorded(read.value);
}

/** The text of an instructor's link, where a file holds that and nothing else. */
function linkIn(bytes: Uint8Array): string | null {
  const text = new TextDecoder().decode(bytes.subarray(0, 9000)).trim();
  return /^[\w.-]{20,8000}$/.test(text) && unpackAssignment(text, ownJob).ok ? text : null;
}

async function keepRecorded(work: RecordedWork): Promise<Taken> {
  const found = jobOf(work);
  if (found === null) return refused('It is work on a job that this program does not have.');
  const { def, scenario } = load(found.file);
  const { recording } = work;
  const again = reproduced(def, scenario, recording);
  if (!again.ok) return refused(again.why);
  const place = await keptPlace();
  if (!('keeper' in place)) return refused(`This browser keeps no work: ${place.why}`);
  const { terms, seed, acts, endStep, stateHash } = recording;
  const head: KeptHead = {
    id: '',
    format: 'freestroke-kept/1',
    scenarioId: scenario.id,
    title: scenario.title,
    scenarioHash: recording.scenarioHash,
    setHash: recording.setHash,
    seed,
    mode: terms.mode,
    hints: terms.hints,
    begun: work.begun ?? Date.now(),
    ended: again.job.ended,
    ...(found.set !== undefined && { set: found.set }),
    ...(work.from && { from: work.from }),
    // what was finished elsewhere was not done here
    ...(again.job.ended && {
      isFromFile: true as const,
      marks: keptMarks(mark(def, scenario, again.job), scenario),
    }),
  };
  return addUnderFreeName({ head, acts, rest: { step: endStep, stateHash } });
}

/** Keeps work under the time at which it was begun; work that is here already is not kept twice. */
async function addUnderFreeName({ head, acts, rest }: KeptJob): Promise<Taken> {
  const place = await keptPlace();
  if (!('keeper' in place)) return refused(`This browser keeps no work: ${place.why}`);
  for (let { begun } = head; ; begun += 1) {
    const id = `${head.scenarioId} ${begun}`;
    const address = addressOf({ ...head, begun });
    const here = await place.keeper.read(id);
    if (here !== null && canonical(here.acts) === canonical(acts)) return { address };
    if (here !== null) continue;
    await place.keeper.add({ head: { ...head, id, begun }, acts, rest });
    return { address };
  }
}

/** Where kept work is gone on with, or looked back at once it is over. */
function addressOf({ scenarioId, mode, begun, ended, set }: KeptHead): string {
  if (ended) return debriefHash(`${scenarioId} ${begun}`);
  return set === undefined ? jobHash(scenarioId, mode, begun) : setHash(set, begun);
}

/** Hands a recorded job to the browser to be saved; set: the text of the link by which it was set. */
function save(work: RecordedWork): void {
  const { recording, begun } = work;
  const day = new Date(begun ?? Date.now()).toISOString().slice(0, 16).replace(/[-:]/g, '').replace('T', '-');
  saveFile(`${recording.scenarioId}-${day}.jsonl.gz`, writeRecording(work), 'application/gzip');
}

/** Saves the work of a session as far as it has come. */
export function saveSession(session: Session, set: string | undefined, begun: number | null): void {
  const { definition, scenario, seed, from } = session;
  const recording = record(definition, scenario, session.job(), seed);
  save({ recording, scenario: null, begun, ...(set !== undefined && { set }), ...(from && { from }) });
}

/** Saves work that is kept on this device; returns why it could not be, or null. */
export async function saveKept(id: string): Promise<string | null> {
  const place = await keptPlace();
  if (!('keeper' in place)) return `This browser keeps no work: ${place.why}`;
  const kept = await place.keeper.read(id);
  if (kept === null) return 'This device has no such work; it may have been thrown away.';
  const { head } = kept;
  const file = fileOf(head);
  if (file === undefined) return 'This program does not have the job that it was.';
  const { def, scenario } = load(file);
  const again = resume(def, scenario, kept);
  if (!again.ok) return again.why;
  const { begun, set, from, seed } = head;
  const recording = record(def, scenario, again.job, seed);
  save({ recording, scenario: null, begun, ...(set !== undefined && { set }), ...(from && { from }) });
  return null;
}
