import { cleanAndJudge } from './stages/clean.ts';
import { freePlunger } from './stages/free.ts';
import { lookRound, nameCause, proveCompression, proveFuel, proveSupply, strikeOut } from './stages/prove.ts';
import { receive } from './stages/receive.ts';
import { bleed, closeOutlet, putOn } from './stages/refit.ts';
import { handOver, startUp } from './stages/start.ts';
import { openOutlet, readPump, takeOff } from './stages/takeOff.ts';
import type { Stage, Worker } from './worker.ts';

/** From the job card to the pump read on the cloth and its delivery valve out. */
export const carefulUntilOpen: readonly Stage[] = [
  receive,
  lookRound,
  proveCompression,
  proveFuel,
  proveSupply,
  strikeOut,
  takeOff,
  readPump,
  strikeOut,
  nameCause,
  openOutlet,
];

const carefulToTheEnd: readonly Stage[] = [
  freePlunger,
  cleanAndJudge,
  closeOutlet,
  putOn,
  bleed,
  startUp,
  handOver,
];

/** Does the whole job as it should be done, deciding from what it sees and feels. */
export const careful: Worker = {
  name: 'careful',
  *work(view) {
    for (const stage of [...carefulUntilOpen, ...carefulToTheEnd]) yield* stage(view);
  },
};
