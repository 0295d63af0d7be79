import appleWash from '../../scenarios/apple-wash.json';
import ciderPress from '../../scenarios/cider-press.json';
import clayMixer from '../../scenarios/clay-mixer.json';
import coldStoreLamps from '../../scenarios/cold-store-lamps.json';
import dryingLoftFan from '../../scenarios/drying-loft-fan.json';
import forgeBlower from '../../scenarios/forge-blower.json';
import frostPump from '../../scenarios/frost-pump.json';
import frostPumpAgain from '../../scenarios/frost-pump-again.json';
import hoist from '../../scenarios/hoist.json';
import hopKilnFan from '../../scenarios/hop-kiln-fan.json';
import lambingShedLights from '../../scenarios/lambing-shed-lights.json';
import limeKilnFan from '../../scenarios/lime-kiln-fan.json';
import mushroomCellarFan from '../../scenarios/mushroom-cellar-fan.json';
import ramPumpHouse from '../../scenarios/ram-pump-house.json';
import readingRoomLamps from '../../scenarios/reading-room-lamps.json';
import sawBench from '../../scenarios/saw-bench.json';
import seedStoreFan from '../../scenarios/seed-store-fan.json';
import sheepShower from '../../scenarios/sheep-shower.json';
import woolPress from '../../scenarios/wool-press.json';
import type { Mode } from '../jobs/scenario.ts';
import type { JobOffer } from '../panels/first/FirstPage.tsx';
import { faultOf } from '../session/keptMarks.ts';
import type { Json } from '../session/mergePatch.ts';
import type { Choice } from '../session/nextJob.ts';

/** What the first screen reads of a job's file; the rest is checked when the job is opened. */
interface JobFile {
  readonly id: string;
  readonly title: string;
  readonly complaint: string;
  readonly history: readonly string[];
  readonly place: { readonly where: string };
  readonly modes: readonly string[];
  readonly marking: { readonly causes: readonly string[] };
}

/** The jobs by how much they ask for, easiest first. */
const piles: readonly { readonly name: string; readonly jobs: readonly JobFile[] }[] = [
  {
    name: 'To begin with',
    jobs: [lambingShedLights, seedStoreFan, readingRoomLamps, frostPump, appleWash, hoist],
  },
  {
    name: 'Any week of the year',
    jobs: [dryingLoftFan, ciderPress, coldStoreLamps, sheepShower, hopKilnFan, forgeBlower, sawBench],
  },
  {
    name: 'The ones that come back',
    jobs: [mushroomCellarFan, clayMixer, limeKilnFan, frostPumpAgain, ramPumpHouse, woolPress],
  },
];

/** Every job that can be taken on, as its file says it. */
export const jobFiles: readonly JobFile[] = piles.flatMap(({ jobs }) => jobs);

/** The jobs' files as they stand, by id; a file of JSON is JSON. */
export const ownJobs = Object.fromEntries(jobFiles.map((file) => [file.id, file])) as unknown as Readonly<
  Record<string, Json>
>;

/** A job's file as it stands, if the program has one of that id. */
export const ownJob = (id: string): Json | undefined =>
  Object.hasOwn(ownJobs, id) ? ownJobs[id] : undefined;

const order: readonly Mode[] = ['guided', 'practice', 'assessed'];

/** What the first screen shows of each job. */
export const offers: readonly JobOffer[] = piles.flatMap(({ name, jobs }) =>
  jobs.map(({ id, title, complaint, history, place, modes }) => ({
    id,
    title,
    complaint,
    history,
    where: place.where,
    pile: name,
    modes: order.filter((mode) => modes.includes(mode)),
  })),
);

/** The same as far as choosing the next one goes. */
export const choices: readonly Choice[] = offers.map(({ id, pile, modes }, at) => ({
  id,
  pile,
  modes,
  fault: faultOf(jobFiles[at]?.marking.causes ?? []),
}));
