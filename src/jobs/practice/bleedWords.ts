import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimEvent } from '../../sim/set/events.ts';
import type { Job } from '../job.ts';
import { cubicMillimetres, quantity } from '../quantity.ts';
import { damageText } from './harmWords.ts';
import type { Given, Judgement } from './piece.ts';

type Pull = Extract<SimEvent, { kind: 'pullEnded' }>;

/** Air that still keeps the nozzle shut, m3, and how far off its figure a union may be left, as a share. Our judgement. */
const AIRY = 2e-8;
const BAND = 0.25;
/** Pulls past the first solid one that are fuel run to waste. */
const SPARE = 2;

/** A pull with the union slack, and whether what it brought was solid. */
interface Bled {
  readonly pull: Pull;
  readonly solid: boolean;
}

function pullsOf(job: Readonly<Job>): Bled[] {
  return job.log.flatMap(({ events }) => {
    const pull = events.find((event): event is Pull & SimEvent => event.kind === 'pullEnded');
    if (pull === undefined) return [];
    const codes = events.flatMap((event) => (event.kind === 'found' ? [event.finding.code] : []));
    return [{ pull, solid: codes.includes('fuelAtUnion') }];
  });
}

function airLeft(given: Given): string[] {
  const { line, pump, supply } = given.job.sim;
  const places: [number, string][] = [
    [supply.galleryAir, 'in hose and pump'],
    [pump.air, 'under the delivery valve'],
    [line.air, 'in the pipe'],
  ];
  return places
    .filter(([air]) => air > AIRY)
    .map(([air, where]) => `${cubicMillimetres(air)} of air stand ${where}.`);
}

function airAdvice({ job }: Given): string {
  const { supply, pump, control } = job.sim;
  if (supply.galleryAir > AIRY)
    return supply.tank < 1e-5 || !supply.tapOpen || !supply.capVented
      ? 'Nothing runs down to the pump: look at tank, vent and tap before you pull again.'
      : 'Open the bleed screw and let it run until no bubbles come, before you pull.';
  if (pump.air > AIRY)
    return 'No pulling drives that out. Cam low, pipe off, holder slack: let fuel well up past the valve.';
  if (control.stopLever === 'stop') return 'The stop lever is over: the pump delivers nothing.';
  return 'Union slack, lever held, and pull until what comes is solid.';
}

function jointFaults(def: SetDefinition, { job }: Given): string[] {
  const { joints, parts } = job.sim.assembly;
  if (parts.pipe !== 'fitted') return ['The pipe is off.'];
  const ids = ['pipeAtInjector', 'pipeAtPump', 'bleedScrew', 'holder'] as const;
  const names = {
    pipeAtInjector: 'The union at the injector',
    pipeAtPump: 'The union at the pump',
    bleedScrew: 'The bleed screw',
    holder: 'The holder',
  };
  return ids.flatMap((id) => {
    const off = joints[id].torque / def.joints[id].torque - 1;
    if (Math.abs(off) <= BAND) return [];
    return [
      `${names[id]} is left at ${quantity(joints[id].torque, 'N·m', 1)}, for ${quantity(def.joints[id].torque, 'N·m', 0)}.`,
    ];
  });
}

/** Judges a bled line by what air the model still has in it, and by how the pulls went. */
export function judgeBleeding(def: SetDefinition, given: Given): Judgement {
  const { job, before } = given;
  const pulls = pullsOf(job);
  const air = airLeft(given);
  const joints = jointFaults(def, given);
  const unheld = pulls.filter(({ pull }) => !pull.held).length;
  const first = pulls.findIndex(({ solid }) => solid);
  const wasted = first < 0 ? 0 : pulls.slice(first + 1).filter(({ pull }) => pull.fuelAtSlack > 0).length;
  const spoilt = job.sim.damage.slice(before.damage.length).map(damageText);
  const faults = [
    ...air,
    ...joints,
    ...(unheld > 0
      ? [`${unheld} of ${pulls.length} pulls were against compression: hold the lever open.`]
      : []),
    ...(wasted > SPARE
      ? [`You pulled ${wasted} times more after it came solid; that is fuel in the tray.`]
      : []),
    ...(job.sim.hurt.length > before.hurt.length ? ['Somebody was hurt.'] : []),
    ...spoilt.map((text) => `It cost something: ${text}.`),
  ];
  const count = `${pulls.length} ${pulls.length === 1 ? 'pull' : 'pulls'}`;
  if (faults.length === 0)
    return {
      right: true,
      says: [
        `Right. No air is left, after ${count}; ${quantity(job.sim.supply.spilled * 1e6, 'ml', 0)} ran into the tray.`,
      ],
    };
  return { right: false, says: ['Not so.', ...faults, ...(air.length > 0 ? [airAdvice(given)] : [])] };
}
