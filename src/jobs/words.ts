import type { AdviceId } from './advice.ts';
import type { CauseGroupId, CauseId } from './causes.ts';

const causes: Record<CauseId, string> = {
  airInletBlocked: 'air element blocked',
  exhaustBlocked: 'exhaust blocked',
  decompressorNotClosing: 'decompressor not closing',
  inletValveLeaking: 'inlet valve leaking',
  exhaustValveLeaking: 'exhaust valve leaking',
  ringsWorn: 'rings worn or stuck',
  tooColdForThePull: 'too cold for the pull that it gets',
  tankEmpty: 'tank empty',
  tapShut: 'fuel tap shut',
  ventBlocked: 'vent in the tank cap blocked',
  filterBlocked: 'filter blocked',
  waterInFuel: 'water in the fuel',
  fuelWaxed: 'fuel waxed by the cold',
  fuelContaminated: 'wrong or stale fuel in the tank',
  airDrawnIn: 'air drawn in at the hose',
  plungerStuckUp: 'plunger seized at the top of its stroke',
  plungerStuckDown: 'plunger seized at the bottom of its stroke',
  plungerStuckInRotation: 'plunger goes up and down but will not turn',
  plungerSticky: 'plunger sticky, not coming back',
  pairBinding: 'pair pinched by an over-tightened holder',
  wornPair: 'plunger and barrel worn',
  returnSpringBroken: 'return spring broken',
  camOrCupWorn: 'cam or cup worn',
  wrongShims: 'wrong thickness of shims',
  plungerHalfTurnOut: 'plunger fitted half a turn out',
  pinOutOfFork: 'control pin out of the governor fork',
  pinBent: 'control pin bent',
  deliveryValveLeaking: 'delivery valve not holding',
  airInLine: 'air left in the line',
  jointLeaking: 'union weeping or pipe cracked',
  injectorNotOpening: 'injector not opening',
  injectorNotClosing: 'injector not closing',
  injectorSpringWeak: 'injector spring weak',
  nozzleCoked: 'nozzle holes coked',
  stopLeverAtStop: 'stop lever left at stop',
  governorSeized: 'governor linkage seized',
};

const meanings: Record<CauseId, string> = {
  airInletBlocked: 'No air to squeeze or to burn.',
  exhaustBlocked: 'What is burnt cannot get out, so no fresh air gets in.',
  decompressorNotClosing: 'Its lever or its play holds the valve open; the cylinder cannot build pressure.',
  inletValveLeaking: 'Pressure goes back out through the air box.',
  exhaustValveLeaking: 'Pressure goes out through the silencer.',
  ringsWorn: 'Pressure goes past the piston into the crankcase and out at its breather.',
  tooColdForThePull: 'Thick oil eats the pull and cold walls the heat; the air is not hot enough at the top.',
  tankEmpty: 'There is nothing to run down.',
  tapShut: 'What is in the tank stays there.',
  ventBlocked: 'The tank holds its fuel back as a stopped bottle does.',
  filterBlocked: 'It lets a little through, too little to fill the pump.',
  waterInFuel: 'The nozzle sprays what does not burn.',
  fuelWaxed: 'Wax comes out of summer fuel in frost and stops the filter.',
  fuelContaminated: 'It sprays, but what is sprayed takes too long to light.',
  airDrawnIn: 'The pump sucks air past a hose that no longer seals, over and over.',
  plungerStuckUp:
    'The cam has pushed it up and the return spring cannot bring it back; nothing is drawn in, nothing is delivered.',
  plungerStuckDown: 'It has not moved since it stuck; seen on a pump that has not been cranked since.',
  plungerStuckInRotation: 'The stop groove stays at the port, so that it pumps and delivers nothing.',
  plungerSticky: 'Gum holds it half way; the spring brings it part of the way back and no further.',
  pairBinding: 'The barrel is drawn in until the plunger drags; it looks seized and is only squeezed.',
  wornPair: 'It leaks past the plunger as fast as it is pushed, worst when warm.',
  returnSpringBroken: 'The cam pushes the plunger up and nothing brings it down.',
  camOrCupWorn: 'The stroke is short and late, so that too little comes too late.',
  wrongShims: 'Delivery begins at the wrong moment: too thick late, too thin early.',
  plungerHalfTurnOut: 'There is no helix at the port: full fuel, and nothing governs it.',
  pinOutOfFork:
    'The throttle moves the fork and the fork moves nothing; it may be stuck at no fuel or at full.',
  pinBent: 'It stands off from where the fork asks, so that full throttle gives little fuel.',
  deliveryValveLeaking: 'The line runs back into the pump between strokes.',
  airInLine: 'What the plunger pushes is taken up by squeezing air; the nozzle is not reached.',
  jointLeaking: 'Pressure is lost on the way to the nozzle.',
  injectorNotOpening: 'Fuel comes to the union, and the nozzle lets none through.',
  injectorNotClosing: 'It runs out of the nozzle in a stream and does not burn.',
  injectorSpringWeak: 'It opens too early and dribbles where it should spray.',
  nozzleCoked: 'Too few holes are open: it creaks, and little goes in.',
  stopLeverAtStop: 'The pump is told to deliver nothing.',
  governorSeized: 'Neither fork nor pin moves, whatever lever is moved.',
};

const groups: Record<CauseGroupId, string> = {
  air: 'Air',
  compression: 'Compression',
  fuelSupply: 'Fuel supply',
  pump: 'Pump',
  lineAndInjector: 'Line and injector',
  controls: 'Controls',
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
/** The heading under which a group of causes stands. */
export const causeGroupText = (group: CauseGroupId): string => groups[group];
/** Advice as it is written on the card. */
export const adviceText = (id: AdviceId): string => advice[id];
