import type { AdviceId } from './advice.ts';
import type { CauseId } from './causes.ts';

const causes: Record<CauseId, string> = {
  plungerStuckUp: 'plunger seized at the top of its stroke',
  plungerStuckDown: 'plunger seized at the bottom of its stroke',
  plungerStuckInRotation: 'plunger goes up and down but will not turn',
  pinOutOfFork: 'control pin out of the governor fork',
  airInLine: 'air in the line',
  noFuelFromTank: 'no fuel comes from the tank',
  waterInFuel: 'water or dirt in the fuel',
  deliveryValveLeaking: 'delivery valve not holding',
  injectorNotOpening: 'injector not opening',
  wornPair: 'plunger and barrel worn',
  stopLeverAtStop: 'stop lever left at stop',
  lowCompression: 'compression too low',
  airInletBlocked: 'air inlet blocked',
  decompressorNotClosing: 'decompressor not closing',
};

const meanings: Record<CauseId, string> = {
  plungerStuckUp:
    'The cam has pushed it up and the return spring cannot bring it back; nothing is drawn in, nothing is delivered.',
  plungerStuckDown: 'It has not moved since it stuck; seen on a pump that has not been cranked since.',
  plungerStuckInRotation: 'The stop groove stays at the port, so that it pumps and delivers nothing.',
  pinOutOfFork:
    'The throttle moves the fork and the fork moves nothing; it may be stuck at no fuel or at full.',
  airInLine: 'What the plunger pushes is taken up by squeezing air; the nozzle is not reached.',
  noFuelFromTank: 'Empty, tap shut, vent blocked, filter blocked, hose kinked.',
  waterInFuel: 'The nozzle sprays what does not burn, or is held up by dirt.',
  deliveryValveLeaking: 'The line runs back into the pump between strokes.',
  injectorNotOpening: 'Fuel comes to the union, and the nozzle lets none through.',
  wornPair: 'It leaks past the plunger as fast as it is pushed, worst when warm.',
  stopLeverAtStop: 'The pump is told to deliver nothing.',
  lowCompression: 'The air does not get hot enough to light the spray.',
  airInletBlocked: 'No air to squeeze or to burn.',
  decompressorNotClosing: 'The valve stands open and the cylinder cannot build pressure.',
};

const advice: Record<AdviceId, string> = {
  freshFuel: 'Fresh, clean fuel; drain what is old before it is put away.',
  runMonthly: 'Run it warm once a month while it stands.',
  stopByLever: 'Stop it by the stop lever.',
  neverRunDry: 'Never let it run dry: fuel is what oils the pump.',
  runDryForStorage: 'Run the pump dry before it is put away.',
  stopByTap: 'Stop it by shutting the fuel tap.',
  hitItNextTime: 'If it sticks again, tap the pump on the engine.',
};

/** A cause in the trade's words, without a full stop. */
export const causeText = (cause: CauseId): string => causes[cause];
/** What a cause would mean, in one sentence. */
export const causeMeaning = (cause: CauseId): string => meanings[cause];
/** Advice as it is written on the card. */
export const adviceText = (id: AdviceId): string => advice[id];
