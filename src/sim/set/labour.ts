import type { SimCommand } from './commands.ts';
import { mendSeconds } from './mend.ts';

/** Honest working time of the acts, s. Assumed from practice, no source; shown, never marked. */
const seconds: Partial<Record<SimCommand['do'], number>> = {
  setPlace: 20,
  moveThrottle: 2,
  moveStopLever: 2,
  holdDecompressor: 1,
  setTap: 3,
  setCap: 5,
  fillTank: 120,
  drainBowl: 90,
  loosen: 25,
  tighten: 35,
  remove: 40,
  fit: 60,
  cover: 10,
  clean: 60,
  placePump: 8,
  strike: 6,
  pushPin: 6,
  soak: 30,
  orderPair: 172_800,
  blockInlet: 2,
};

const checks: Record<string, number> = {
  airElement: 60,
  tank: 20,
  capVent: 15,
  bowl: 40,
  hoseFlow: 60,
  pinFollows: 30,
  unionFuel: 10,
  cupEnd: 10,
  pinTurn: 15,
  plungerTravel: 15,
  freeSlide: 40,
  plungerFace: 60,
  valveSeat: 40,
  shimCount: 20,
  leaks: 60,
  stopLeverProof: 15,
  running: 30,
  tapStands: 10,
  hoseLook: 60,
  fuelSample: 120,
  exhaust: 300,
  blowBy: 180,
  decompressorPlay: 60,
  oil: 30,
  camLift: 300,
  linkage: 180,
  nozzleSpray: 900,
};

/** Working time that a command takes on a set at rest, s (0: it takes the time it takes). */
export function labourOf(command: SimCommand): number {
  if (command.do === 'check') return checks[command.what] ?? 20;
  if (command.do === 'mend') return mendSeconds[command.what];
  if (command.do === 'wait') return command.seconds;
  if (command.do === 'pushPlunger') return 0;
  return seconds[command.do] ?? 0;
}
