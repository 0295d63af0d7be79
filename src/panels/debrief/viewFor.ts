import type { Command } from '../../jobs/job.ts';
import type { SimState } from '../../sim/set/state.ts';

/** Viewpoints from which an act of each of these things is seen best; the whole set otherwise. */
const seenFrom: Readonly<Record<string, string>> = {
  pipeAtInjector: 'injector',
  nozzleSpray: 'injector',
  tank: 'fuel',
  tapStands: 'fuel',
  capVent: 'fuel',
  bowl: 'fuel',
  fuelSample: 'fuel',
  hoseLook: 'fuel',
  filter: 'fuel',
  windowCover: 'window',
  pinFollows: 'window',
  linkage: 'window',
  stopLeverProof: 'window',
  pump: 'pump',
  pumpNut1: 'pump',
  pumpNut2: 'pump',
  pipeAtPump: 'pump',
  hose: 'pump',
  hoseClip: 'pump',
  bleedScrew: 'pump',
  pumpArea: 'pump',
};
const byCommand: Partial<Record<Command['do'], string>> = {
  setTap: 'fuel',
  setCap: 'fuel',
  fillTank: 'fuel',
  drainBowl: 'fuel',
};

/** The viewpoint from which an act is seen best as the set stands after it. */
export function viewFor(
  command: Command | null,
  { pump }: Readonly<SimState>,
): { view: string; section: boolean } {
  if (command === null) return { view: 'set', section: false };
  if (pump.rest !== null) {
    const isForce = ['strike', 'pushPlunger', 'grasp', 'letGo', 'pushPin'].includes(command.do);
    return isForce ? { view: 'section', section: true } : { view: 'bench', section: false };
  }
  const thing =
    'joint' in command
      ? command.joint
      : 'part' in command
        ? command.part
        : 'what' in command
          ? command.what
          : '';
  return { view: seenFrom[thing] ?? byCommand[command.do] ?? 'set', section: false };
}
