import lambingShedLights from '../../scenarios/lambing-shed-lights.json';
import type { Mode } from '../jobs/scenario.ts';
import type { JobOffer } from '../panels/first/FirstPage.tsx';

/** Every job that can be taken on, as its file says it; checked when it is opened. */
export const jobFiles: readonly (typeof lambingShedLights)[] = [lambingShedLights];

const order: readonly Mode[] = ['guided', 'practice', 'assessed'];

/** What the first screen shows of each job. */
export const offers: readonly JobOffer[] = jobFiles.map(
  ({ id, title, complaint, history, place, modes }) => ({
    id,
    title,
    complaint,
    history,
    where: place.where,
    modes: order.filter((mode) => modes.includes(mode)),
  }),
);
