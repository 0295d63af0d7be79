import type { Command } from './job.ts';

/** Dangers of this job; each caution stands where the act is. */
export const cautionIds = [
  'highPressureJet',
  'kickBack',
  'fireAndSolvent',
  'carbonMonoxide',
  'hotSurfaces',
  'hearing',
  'backFeed',
  'lifting',
  'flyingCup',
  'flyingChips',
  'runaway',
] as const;
export type CautionId = (typeof cautionIds)[number];

export interface CautionWords {
  readonly title: string;
  readonly text: string;
}

/** Plain words for each caution; the figures behind them are in physics notes of the model document. */
export const cautionWords: Record<CautionId, CautionWords> = {
  highPressureJet: {
    title: 'Fuel under pressure goes through skin',
    text: 'A jet from a nozzle or a weeping union can go in without pain and leave only a pinhole. Keep hands and face away while the engine is turned; look for leaks with a piece of card. If it happens, go to hospital at once, say that it was fuel under high pressure, and say how high. Follow the maker’s data and your workplace rules.',
  },
  kickBack: {
    title: 'The cord can snatch back',
    text: 'An engine that fires before it is over the top pulls the cord, and your arm, back. Draw it up to compression, keep a grip that lets go, stand square, and pull briskly with the lever held open until it spins. The maker’s starting instructions come first.',
  },
  fireAndSolvent: {
    title: 'Vapour and mist burn',
    text: 'Spilled fuel, mist and solvent vapour can light from a flame, a spark or a hot exhaust. No flame, plenty of air, an extinguisher in reach, wet rags in a lidded bin outdoors. Read the label and the safety sheet of the solvent, and follow local fire rules.',
  },
  carbonMonoxide: {
    title: 'Exhaust kills without warning',
    text: 'Never run an engine in a shed or a closed room, not even for a moment with the door open. Take it outside, well away from doors and windows, or lead the exhaust out as local rules require.',
  },
  hotSurfaces: {
    title: 'Hot metal',
    text: 'Exhaust, fins and injector stay hot long after the engine stops. Let it cool before hands go in.',
  },
  hearing: {
    title: 'Loud beside the ear',
    text: 'Put hearing protection on before the engine runs, as your workplace rules ask.',
  },
  backFeed: {
    title: 'The generator must not feed the building',
    text: 'Isolate the load before starting. Current that runs back into the supply can kill someone working on the line. Connecting a set to a building is work for a licensed electrician under local codes, through an approved changeover switch.',
  },
  lifting: {
    title: 'Heavier than it looks',
    text: 'Two people or a hoist to move the set; lift within your workplace’s limits.',
  },
  flyingCup: {
    title: 'The cup can shoot out',
    text: 'A compressed return spring holds well over a hundred newtons. Keep the cup retained, and fingers and face out of its line, until the spring is known to be at rest.',
  },
  flyingChips: {
    title: 'Chips and splashes',
    text: 'Wear eye protection before anything is struck, cleaned with solvent or turned with a joint slack.',
  },
  runaway: {
    title: 'It may not stop when told',
    text: 'After work on the pump an engine can run away at full fuel. Before the first start prove that the stop lever reaches zero delivery, and have a board to hand that covers the air inlet. Do not reach over a running engine.',
  },
};

function cautionsForJoint(joint: string): CautionId[] {
  if (joint === 'pipeAtInjector' || joint === 'pipeAtPump' || joint === 'holder') {
    return ['highPressureJet', 'fireAndSolvent'];
  }
  return joint === 'hoseClip' || joint === 'bleedScrew' ? ['fireAndSolvent'] : [];
}

/** The cautions that belong at an act, most pressing first. */
export function cautionsFor(command: Command): CautionId[] {
  switch (command.do) {
    case 'pullCord':
      return ['kickBack', 'highPressureJet', 'carbonMonoxide', 'backFeed', 'runaway', 'hearing'];
    case 'loosen':
      return cautionsForJoint(command.joint);
    case 'check':
      if (command.what === 'nozzleSpray') return ['highPressureJet', 'fireAndSolvent', 'flyingChips'];
      return command.what === 'leaks' ? ['highPressureJet'] : [];
    case 'strike':
      return ['flyingChips', 'flyingCup'];
    case 'soak':
    case 'clean':
    case 'fillTank':
    case 'drainBowl':
    case 'mend':
      return ['fireAndSolvent', 'flyingChips'];
    case 'remove':
      return command.part === 'retainer' || command.part === 'cup' ? ['flyingCup'] : ['hotSurfaces'];
    case 'setPlace':
      if (command.what === 'openAir') return ['lifting', 'carbonMonoxide'];
      return command.what === 'loadIsolated' ? ['backFeed'] : [];
    default:
      return [];
  }
}

/** Said with every job: what this program is not. */
export const disclaimer =
  'This is a generic set, not a particular engine. Torques, pressures and clearances come from the maker’s data. Passing here is not a licence to work unsupervised; your employer’s rules and local codes come first.';
