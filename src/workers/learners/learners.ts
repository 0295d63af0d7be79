import { hasty } from '../hasty.ts';
import { methodical } from '../methodical.ts';
import type { Worker } from '../worker.ts';
import { workers } from '../workers.ts';
import { fumbling } from './fumbling.ts';
import { byTheBook, milking, openEverything, replaceEverything } from './habits.ts';
import { slipping } from './slips.ts';

/** Somebody whose level or habit is known because it was built in: what the marks are tried on. */
export interface Learner {
  readonly name: LearnerName;
  /** skilled: should pass; slips: the same with a known share of acts gone wrong; exploit: must pass nothing. */
  readonly kind: 'skilled' | 'slips' | 'exploit' | 'unskilled';
  readonly worker: (seed: number) => Worker;
}

export const learnerNames = [
  'expert',
  'textbook',
  'slips-5',
  'slips-10',
  'slips-20',
  'slips-40',
  'hasty',
  'hint-milker',
  'replace-everything',
  'open-everything',
  'random',
  'do-nothing',
] as const;
export type LearnerName = (typeof learnerNames)[number];

const withSlips = (name: LearnerName, rate: number): Learner => ({
  name,
  kind: 'slips',
  worker: (seed) => slipping(methodical, rate, seed),
});

/** Every scripted learner. They see the job as told, the maker's data and the card, and nothing of the model. */
export const learners: readonly Learner[] = [
  { name: 'expert', kind: 'skilled', worker: () => methodical },
  { name: 'textbook', kind: 'skilled', worker: () => byTheBook },
  withSlips('slips-5', 0.05),
  withSlips('slips-10', 0.1),
  withSlips('slips-20', 0.2),
  withSlips('slips-40', 0.4),
  { name: 'hasty', kind: 'unskilled', worker: () => hasty },
  { name: 'hint-milker', kind: 'exploit', worker: () => milking(methodical) },
  { name: 'replace-everything', kind: 'exploit', worker: () => replaceEverything },
  { name: 'open-everything', kind: 'exploit', worker: () => openEverything },
  { name: 'random', kind: 'unskilled', worker: fumbling },
  { name: 'do-nothing', kind: 'exploit', worker: () => workers.nobody },
];
