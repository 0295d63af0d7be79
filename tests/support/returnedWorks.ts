import { readFileSync } from 'node:fs';
import { termsOf } from '../../src/jobs/job.ts';
import { readSet } from '../../src/jobs/readSet.ts';
import { readScenario } from '../../src/jobs/scenario.ts';
import { packAssignment } from '../../src/session/assignment.ts';
import type { Json } from '../../src/session/mergePatch.ts';
import { type RecordedAct, replayActs } from '../../src/session/recording.ts';
import { returnWork } from '../../src/session/returned.ts';
import careful from '../golden/careful-lambing-shed-lights-1.json';
import hasty from '../golden/hasty-lambing-shed-lights-1.json';

const ID = 'lambing-shed-lights';
const text = readFileSync(`scenarios/${ID}.json`, 'utf8');
const read = readScenario(text);
const set = readSet(readFileSync('models/bench-set/set.json', 'utf8'));
if (!read.ok || !set.ok) throw new Error('set or job is not sound');

export const def = set.value;
const pattern = read.value;
export const ownJobs: Readonly<Record<string, Json>> = { [ID]: JSON.parse(text) };
export const own = (id: string): Json | undefined => (Object.hasOwn(ownJobs, id) ? ownJobs[id] : undefined);

/** A whole job as somebody did it, and the job as an instructor would have set it to them. */
export interface Worked {
  readonly acts: readonly RecordedAct[];
  readonly seed: number;
  readonly endStep: number;
}
const workedOf = ({
  recording,
}: {
  recording: { acts: unknown; seed: number; endStep: number };
}): Worked => ({
  // golden files hold acts as the recorder wrote them
  acts: recording.acts as readonly RecordedAct[],
  seed: recording.seed,
  endStep: recording.endStep,
});
export const carefulWork = workedOf(careful);
export const hastyWork = workedOf(hasty);

/** The job with the seed that it was worked with. */
export const jobOf = (seed: number) => ({ ...pattern, seed });

/** The text of a link by which the job was set; `nonce` tells settings apart. */
export const linkOf = ({ seed }: Worked, nonce: string): string =>
  packAssignment(
    { name: 'Week 3', scenario: jobOf(seed), mode: 'assessed', hints: 0, due: null, nonce },
    ID,
    own,
  );

/** A finished job as it comes back: `who` did these acts; `seconds` by their clock. */
export function returned(worked: Worked, who: string, seconds = 3000, nonce = 'abcd1'): Uint8Array {
  const { acts, seed, endStep } = worked;
  const scenario = jobOf(seed);
  const job = replayActs(def, scenario, { seed, terms: termsOf('assessed'), acts, endStep });
  const begun = 1_790_000_000_000;
  const by = { set: linkOf(worked, nonce), who, begun, ended: begun + seconds * 1000, isOwnJob: true };
  return returnWork(def, scenario, job, by);
}
