import { createSoundDesk } from '../bench/sound/soundDesk.ts';

/** The one sound desk of the page: a choice made in a job holds in the next. */
export const soundDesk = createSoundDesk();
