import type { Block } from '../laws/blockContact.ts';
import { type StrikeResult, strikeBody } from '../laws/strike.ts';
import { throwCup } from './applyPart.ts';
import type { SimCommand, StrikeTarget } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { damage, hurt } from './harm.ts';
import { springForce } from './kinematics.ts';
import { plungerOf, staticFriction } from './pair.ts';
import type { SimState } from './state.ts';

type Strike = Extract<SimCommand, { do: 'strike' }>;

/** Movement of the plunger that can be told from none, m. */
const SEEN = 2e-5;
/** Force through wood on cup or plunger that bruises them, N; the spring and the cup's edge take it. Assumed. */
const SOFT_LIMIT = 900;
/** Force at which the fuel locked under a fitted delivery valve hammers its seat, N. Assumed. */
const SEAT_LIMIT = 700;

function blockFor(def: SetDefinition, command: Strike, onPair: boolean): Block {
  const { blow } = def;
  if (command.block === 'wood')
    return { kind: 'wood', stiffness: blow.woodStiffness, restitution: blow.woodRestitution };
  const modulus = blow.steelModulus / (2 * (1 - blow.steelPoisson * blow.steelPoisson));
  // a contact flows fully at about three times the softer part's yield stress
  return {
    kind: 'steel',
    modulus,
    radius: blow.faceRadius,
    flowPressure: 3 * (onPair ? blow.yieldHard : blow.yieldSoft),
  };
}

/** What the blow lands on: a cup that stands prouder than the block is relieved meets it before the body does. */
export function landsOn(
  def: SetDefinition,
  state: Readonly<SimState>,
  target: StrikeTarget,
): 'body' | 'plunger' {
  if (target === 'plunger' || target === 'cup') return 'plunger';
  const proud =
    state.assembly.parts.cup === 'fitted' && def.pump.cupFlush - state.pump.travel > def.blow.blockRelief;
  return target === 'camEnd' && proud ? 'plunger' : 'body';
}

/** The blow itself, on the pump as it lies: what moved, and the forces. The state is left as it is. */
export function blowOf(
  def: SetDefinition,
  state: Readonly<SimState>,
  command: Strike,
  onto: 'body' | 'plunger',
): StrikeResult {
  const { pump } = state;
  const rest =
    pump.rest === 'viceBody' ? 'vice' : pump.rest === null || pump.rest === 'tray' ? 'cloth' : pump.rest;
  return strikeBody({
    hammerMass: def.blow.hammers[command.hammer],
    hammerSpeed: Math.max(0.1, Math.min(8, command.speed)),
    block: blockFor(def, command, onto === 'plunger'),
    struckEnd: command.target === 'outletEnd' || command.target === 'plunger' ? 'outlet' : 'cam',
    onto,
    support: def.blow.supports[rest],
    bodyMass: def.pump.bodyMass,
    plunger: plungerOf(def, state),
  });
}

/** Strikes the loose pump: the model of the blow moves the plunger, its forces do the damage. */
export function strikePump(def: SetDefinition, state: SimState, command: Strike, events: SimEvent[]): void {
  const { pump, assembly } = state;
  if (command.target === 'pin') {
    state.condition.pinBend += 0.6;
    damage(state, 'pin', 'bent', events);
    return;
  }
  const onto = landsOn(def, state, command.target);
  const before = pump.travel;
  const result = blowOf(def, state, command, onto);
  pump.travel = result.travel;
  pump.bond = result.bond;
  const free =
    springForce(def, state, before) > staticFriction(def, state) &&
    staticFriction(def, state) < def.hand.push;
  events.push({
    kind: 'struck',
    target: command.target,
    hammer: command.hammer,
    speed: command.speed,
    block: command.block,
    support: pump.rest ?? 'hand',
    peakForce: result.peakForce,
    slip: result.travel - before,
    travel: result.travel,
    moved: Math.abs(result.travel - before) > SEEN,
    freed: free,
    trace: result.trace.map((t): [number, number] => [t.time, t.force]),
  });
  harm(def, state, command, onto, result.peakForce, events);
  const sprang = before - result.travel > 1e-3 && springForce(def, state, result.travel) > 0;
  if (sprang && assembly.parts.retainer !== 'fitted')
    throwCup(state, springForce(def, state, before), false, events);
}

/** Fuel is locked in above the plunger. */
const isLocked = ({ assembly, pump }: Readonly<SimState>): boolean =>
  assembly.parts.valve === 'fitted' && assembly.parts.holder === 'fitted' && pump.liquid > 2e-7;

/** Least force with which such a blow harms something, N; 0 where steel meets the part at any force. */
export function leastHarm(
  def: SetDefinition,
  state: Readonly<SimState>,
  command: Strike,
  onto: 'body' | 'plunger',
): number {
  if (command.block === 'none') return 0;
  if (onto === 'plunger') return SOFT_LIMIT;
  return isLocked(state) ? Math.min(SEAT_LIMIT, def.blow.damageForce) : def.blow.damageForce;
}

/** The damage that a blow's force does, by where it went. */
function harm(
  def: SetDefinition,
  state: SimState,
  command: Strike,
  onto: 'body' | 'plunger',
  force: number,
  events: SimEvent[],
): void {
  const { condition } = state;
  const steel = command.block === 'none';
  if (steel && command.speed > 1.5 && !state.place.eyeProtection) hurt(state, 'chipInEye', events);
  if (onto === 'plunger') {
    if (steel) chip(state, command.target, events);
    else if (force > SOFT_LIMIT) bruise(state, 1e-4, events);
    return;
  }
  if (steel) {
    condition.squeeze += 12;
    damage(state, 'pumpBody', 'faceDented', events);
  }
  if (force > def.blow.crackForce) {
    condition.squeeze += 250;
    damage(state, 'pumpBody', 'cracked', events);
  } else if (force > def.blow.damageForce) {
    condition.squeeze += (force - def.blow.damageForce) / 60;
    damage(state, 'pumpBody', 'faceCrushed', events);
  }
  if (isLocked(state) && force > SEAT_LIMIT) {
    condition.seatLeak = Math.max(condition.seatLeak, 8e-14);
    damage(state, 'deliveryValve', 'seatHammered', events);
  }
}

function chip(state: SimState, target: StrikeTarget, events: SimEvent[]): void {
  const { condition } = state;
  condition.helixChipped = 1;
  condition.radialClearance = Math.max(condition.radialClearance, 9e-6);
  condition.grit += 25;
  damage(
    state,
    target === 'cup' || target === 'camEnd' ? 'cup' : 'plunger',
    target === 'plunger' ? 'helixChipped' : 'cracked',
    events,
  );
  bruise(state, 2e-4, events);
}

function bruise(state: SimState, lost: number, events: SimEvent[]): void {
  state.condition.bruise += lost;
  state.condition.grit += 8;
  damage(state, 'plunger', 'footBruised', events);
}
