import type {
  CleanId,
  HammerId,
  JointId,
  MendId,
  OpeningId,
  PartId,
  PlaceId,
  RestId,
  SolventId,
  StrikeTarget,
} from '../../sim/set/commands.ts';

/** What each repair leaves behind, for the log. */
export const mendNames: Record<MendId, string> = {
  airElement: 'new air element',
  exhaust: 'silencer cleared',
  filter: 'new filter element, bowl clean',
  hose: 'new fuel hose',
  freshFuel: 'tank, bowl and hose flushed, fresh diesel in',
  decompressor: 'decompressor set, with its play',
  valves: 'inlet and exhaust valves ground in',
  governorLinkage: 'governor linkage freed and oiled',
  injector: 'serviced injector fitted',
  deliveryValve: 'new delivery valve to hand',
  returnSpring: 'new return spring to hand',
  pipe: 'new injector pipe to hand',
  camAndCup: 'new cup and cam in',
  warmUp: 'set warmed through',
  pumpOverhaul: 'pump back from the injection shop, overhauled',
  engineOverhaul: 'engine back, overhauled',
};

/** What the trade calls each part; used in lists, in results and in refusals. */
export const partNames: Record<PartId, string> = {
  airCover: 'air box cover',
  windowCover: 'inspection cover',
  hose: 'fuel hose',
  pipe: 'injector pipe',
  pump: 'pump',
  shims: 'shim pack',
  holder: 'delivery-valve holder',
  valveSpring: 'valve spring',
  valve: 'delivery valve with its seat',
  retainer: 'cup retainer',
  cup: 'cup',
  returnSpring: 'return spring',
  plunger: 'plunger',
};

export const jointNames: Record<JointId, string> = {
  pumpNut1: 'upper pump nut',
  pumpNut2: 'lower pump nut',
  holder: 'delivery-valve holder',
  pipeAtPump: 'union nut at the pump',
  pipeAtInjector: 'union nut at the injector',
  hoseClip: 'hose clip',
  bleedScrew: 'bleed screw',
};

export const placeNames: Record<PlaceId, string> = {
  loadIsolated: 'Load isolated from the building',
  openAir: 'Set outdoors, exhaust clear of doors',
  noFlame: 'No flame or spark near',
  eyeProtection: 'Safety glasses on',
  hearingProtection: 'Ear defenders to hand',
  boardToHand: 'Board to hand for the air inlet',
  trayUnder: 'Drip tray under the work',
  ragsClear: 'Solvent rags away in the lidded tin',
  helperToLift: 'Second person for the lift',
  extinguisher: 'Extinguisher within reach',
};

export const openingNames: Record<OpeningId, string> = {
  engineHole: 'hole in the engine',
  pipeEnds: 'ends of the injector pipe',
  hoseEnd: 'end of the hose',
  holderEnd: 'outlet of the pump',
};

export const cleanNames: Record<CleanId, string> = {
  pumpArea: 'area round the pump',
  barrel: 'barrel bore',
  plunger: 'plunger',
  valve: 'delivery valve',
  shimFace: 'shim face',
  spill: 'spilled fuel',
};

export const restNames: Record<RestId, string> = {
  hand: 'in the hand',
  cloth: 'on the folded cloth',
  anvil: 'on the anvil',
  vice: 'in the vice, soft jaws on the flange',
  viceBody: 'in the vice, jaws on the body',
  tray: 'in the tray',
};

export const targetNames: Record<StrikeTarget, string> = {
  outletEnd: 'outlet end of the body',
  camEnd: 'cam end of the body',
  plunger: 'plunger itself',
  cup: 'cup',
  pin: 'control pin',
};

export const hammerNames: Record<HammerId, string> = {
  light: 'light hammer',
  medium: 'bench hammer',
  heavy: 'heavy hammer',
  sledge: 'club hammer',
};

export const solventNames: Record<SolventId, string> = {
  releasingSolvent: 'releasing fluid',
  diesel: 'clean diesel',
  acetone: 'acetone',
};

const tables: readonly Record<string, string>[] = [partNames, jointNames, openingNames];

/** The trade's word for any part, joint or opening; a code that has no word is shown as it is. */
export function nameOf(code: string): string {
  for (const table of tables) {
    const word = table[code];
    if (word !== undefined) return word;
  }
  return code.replace(/([A-Z])/g, ' $1').toLowerCase();
}
