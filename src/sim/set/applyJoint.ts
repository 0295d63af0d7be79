import { clampForTorque } from '../laws/boltTorque.ts';
import { isLoose } from './blocks.ts';
import type { JointId, SimCommand } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { damage } from './harm.ts';
import { runToWaste, spill } from './lineState.ts';
import { AMBIENT } from './machine.ts';
import { squeezeInVice } from './pair.ts';
import type { SimState } from './state.ts';

type Joint = Extract<SimCommand, { do: 'loosen' | 'tighten' }>;

/** What is ruined when a joint is tightened past what its thread bears. */
const crushed: Record<JointId, readonly [part: string, what: string]> = {
  pumpNut1: ['flange', 'studPulled'],
  pumpNut2: ['flange', 'studPulled'],
  holder: ['pumpBody', 'threadPulled'],
  pipeAtPump: ['holder', 'coneCrushed'],
  pipeAtInjector: ['injector', 'bodyCrushed'],
  hoseClip: ['hose', 'cut'],
  bleedScrew: ['pumpBody', 'bleedThreadPulled'],
};

/** Loosens or tightens one joint: torque to clamp, weeping below it, ruin far above it. */
export function applyJoint(def: SetDefinition, state: SimState, command: Joint, events: SimEvent[]): void {
  const { joint, backup } = command;
  const limits = def.joints[joint];
  const now = state.assembly.joints[joint];
  if (joint === 'holder' && isLoose(state) && state.pump.rest === 'viceBody')
    squeezeInVice(def, state, events);
  if (command.do === 'loosen') {
    const held = now.torque;
    now.torque = 0;
    now.clamp = 0;
    now.at = command.to;
    events.push({ kind: 'jointLoosened', joint, to: command.to, backup, torque: held });
    relieve(def, state, joint, command.to, events);
    return;
  }
  const torque = Math.max(0, command.torque);
  now.torque = torque;
  now.clamp = clampForTorque(torque, limits.factor, limits.thread);
  now.at = torque > 0.02 * limits.torque ? 'tight' : 'slack';
  if (joint === 'holder' && command.newWasher) state.assembly.newWasher = true;
  events.push({ kind: 'jointTightened', joint, torque, clamp: now.clamp, backup });
  if (torque > limits.crush && !now.ruined) {
    now.ruined = true;
    damage(state, crushed[joint][0], crushed[joint][1], events);
  }
}

/** What runs out as a joint is opened. */
function relieve(def: SetDefinition, state: SimState, joint: JointId, to: string, events: SimEvent[]): void {
  if (joint === 'holder' && to === 'off') state.assembly.newWasher = false;
  if (joint === 'hoseClip' && to === 'off' && state.supply.tapOpen) {
    const volume = runToWaste(state, 2e-5);
    events.push({ kind: 'spilled', volume, caught: state.place.trayUnder });
  }
  if (joint === 'pipeAtPump' || joint === 'pipeAtInjector' || joint === 'holder') {
    state.line.pressure = AMBIENT;
    // what the pressure held in the pipe spurts out
    const held = Math.min(state.line.liquid, Math.max(0, def.line.volume - state.line.air));
    spill(state, state.line.liquid - held);
    state.line.liquid = held;
  }
}
