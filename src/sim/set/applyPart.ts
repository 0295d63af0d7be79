import { jointsOf } from './blocks.ts';
import type { PartId, SimCommand } from './commands.ts';
import { moveFork } from './control.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { damage, hurt } from './harm.ts';
import { chamberVolume } from './injection.ts';
import { camLift, springForce } from './kinematics.ts';
import { spill } from './lineState.ts';
import { AMBIENT, machineOf } from './machine.ts';
import { looseBond, settleLoose, soundPair, squeezeInVice, staticFriction } from './pair.ts';
import { scatter } from './random.ts';
import type { SimState } from './state.ts';

type PartCommand = Extract<
  SimCommand,
  { do: 'remove' | 'fit' | 'cover' | 'clean' | 'placePump' | 'orderPair' }
>;

/** Lift above which the cam presses the pump off its seat, m. */
const LOW_SIDE = 2e-4;

/** Takes parts off, puts them on, covers, cleans, and moves the loose pump about. */
export function applyPart(
  def: SetDefinition,
  state: SimState,
  command: PartCommand,
  events: SimEvent[],
): void {
  const { assembly, pump } = state;
  switch (command.do) {
    case 'remove':
      removePart(def, state, command, events);
      return;
    case 'fit':
      fitPart(def, state, command, events);
      return;
    case 'cover':
      assembly.covered[command.opening] = command.on;
      events.push({ kind: 'covered', opening: command.opening, on: command.on });
      return;
    case 'clean':
      clean(state, command.what, command.with, events);
      return;
    case 'placePump':
      pump.rest = command.on;
      pump.camUp = command.camUp;
      if (command.on === 'viceBody') squeezeInVice(def, state, events);
      events.push({ kind: 'pumpPlaced', on: command.on, camUp: command.camUp });
      return;
    case 'orderPair':
      assembly.pairOrdered = true;
      events.push({ kind: 'pairOrdered' });
  }
}

/** Dirt that falls where nothing keeps it out, as friction in the pair (N), different each time. */
function dirt(state: SimState, where: string, most: number, events: SimEvent[]): void {
  const count = (state.repeats[`dirt-${where}`] ?? 0) + 1;
  state.repeats[`dirt-${where}`] = count;
  const grit = most * (0.3 + 0.7 * scatter(state.seed, `dirt-${where}`, count));
  state.condition.grit += grit;
  events.push({ kind: 'dirtGotIn', where, grit });
}

/** The spring throws out a cup that nothing holds. */
export function throwCup(state: SimState, force: number, heldBack: boolean, events: SimEvent[]): void {
  events.push({ kind: 'cupFlew', force, held: heldBack });
  if (heldBack) return;
  const { parts } = state.assembly;
  for (const part of ['cup', 'returnSpring', 'retainer'] as const)
    if (parts[part] === 'fitted') parts[part] = 'bench';
  state.assembly.plungerClean = false;
  hurt(state, state.place.eyeProtection ? 'crushedFinger' : 'flyingCup', events);
}

function removePart(
  def: SetDefinition,
  state: SimState,
  command: { part: PartId; held?: boolean; guidePin?: boolean },
  events: SimEvent[],
): void {
  const { assembly, pump, condition } = state;
  const { part } = command;
  const home = state.place.trayUnder ? 'tray' : 'bench';
  if (part === 'retainer') releaseRetainer(def, state, command.held ?? false, events);
  if (part === 'pump') liftPump(def, state, command.guidePin ?? false, events);
  assembly.parts[part] = home;
  events.push({ kind: 'partRemoved', part });
  if (part === 'pipe') {
    const left = Math.min(5e-8, state.line.liquid);
    spill(state, state.line.liquid - left);
    state.line.liquid = left;
    state.line.air = def.line.volume - left;
  }
  if (part === 'hose') emptyGallery(def, state);
  if (part === 'valve') {
    spill(state, pump.liquid);
    pump.air = chamberVolume(def, machineOf(def), pump.travel);
    pump.liquid = 0;
    pump.pressure = AMBIENT;
    if (!assembly.areaClean) dirt(state, 'chamber', 12, events);
    assembly.valveClean = false;
  }
  if (part === 'plunger') {
    assembly.barrelClean = false;
    assembly.plungerClean = false;
    pump.bond = looseBond();
    pump.travel = 0;
    condition.grit = Math.max(condition.grit, 4);
  }
}

/** What stood in the gallery runs out. */
function emptyGallery(def: SetDefinition, state: SimState): void {
  const { supply } = state;
  spill(state, def.pump.galleryVolume - supply.galleryAir);
  supply.galleryAir = def.pump.galleryVolume;
}

function releaseRetainer(def: SetDefinition, state: SimState, heldBack: boolean, events: SimEvent[]): void {
  const force = springForce(def, state, state.pump.travel);
  // a stuck plunger holds the spring in; a free one has only the ring before it
  if (force > staticFriction(def, state)) throwCup(state, force, heldBack, events);
}

function liftPump(def: SetDefinition, state: SimState, guidePin: boolean, events: SimEvent[]): void {
  const { pump, assembly, condition } = state;
  const lift = camLift(def, state.engine.theta);
  const pressing =
    lift - (assembly.shimThickness - def.pump.nominalShim) - condition.camWear - pump.travel > -1e-4;
  if (lift > LOW_SIDE && pressing) {
    const force = springForce(def, state, pump.travel) + Math.min(200, staticFriction(def, state));
    events.push({ kind: 'pumpCocked', force });
    damage(state, 'flange', 'cockedOnStuds', events);
  }
  if (pump.pinInSlot && !(guidePin && assembly.parts.windowCover !== 'fitted')) {
    condition.pinBend += 0.06;
    damage(state, 'pin', 'draggedOutOfFork', events);
  }
  if (!assembly.areaClean) dirt(state, 'engineHole', 10, events);
  pump.pinInSlot = false;
  pump.rest = 'hand';
  pump.camUp = false;
  pump.speed = 0;
  pump.camForce = 0;
  emptyGallery(def, state);
  settleLoose(def, state, events);
}

function fitPart(
  def: SetDefinition,
  state: SimState,
  command: Extract<SimCommand, { do: 'fit' }>,
  events: SimEvent[],
): void {
  const { assembly, pump } = state;
  const { part } = command;
  if (part === 'pump') seatPump(def, state, command.guidePin ?? false, events);
  if (part === 'plunger') {
    pump.turnedHalf = command.turned ?? false;
    pump.turn = machineOf(def).startTurn / 2;
    pump.travel = 0;
    pump.wet = command.wet ?? false;
    if (assembly.pairOrdered) newPair(def, state);
    if (!assembly.barrelClean || !assembly.plungerClean) dirt(state, 'pair', 30, events);
  }
  if (part === 'shims' && command.thickness !== undefined) assembly.shimThickness = command.thickness;
  if (part === 'valve') {
    const volume = chamberVolume(def, machineOf(def), pump.travel);
    pump.air = command.wet ? 4e-8 : volume;
    pump.liquid = volume - pump.air;
    if (!assembly.valveClean) state.condition.seatDirt = Math.max(state.condition.seatDirt, 6e-14);
  }
  if (part === 'pipe' && !assembly.covered.pipeEnds && !assembly.areaClean) dirt(state, 'pipe', 6, events);
  assembly.parts[part] = 'fitted';
  // nuts are run on by the fingers as the part goes on
  for (const joint of jointsOf[part] ?? []) {
    if (assembly.joints[joint].at === 'off') assembly.joints[joint].at = 'slack';
  }
  if (part === 'retainer' && !command.held) throwCup(state, springForce(def, state, 0), false, events);
  if (part === 'returnSpring' || part === 'cup') pump.speed = 0;
  events.push({ kind: 'partFitted', part, inSlot: pump.pinInSlot, turned: pump.turnedHalf });
  if (part === 'pump') moveFork(def, state, true);
}

/** A new matched pair goes in as a pair: new bore, new plunger, straight pin, nothing left of the old harm. */
function newPair(def: SetDefinition, state: SimState): void {
  const { assembly } = state;
  soundPair(def, state);
  assembly.pairNew = true;
  assembly.pairOrdered = false;
}

function seatPump(def: SetDefinition, state: SimState, guidePin: boolean, events: SimEvent[]): void {
  const { pump, assembly, control, condition } = state;
  const lift = camLift(def, state.engine.theta);
  if (lift > LOW_SIDE && assembly.parts.cup === 'fitted') {
    events.push({ kind: 'pumpCocked', force: springForce(def, state, lift) });
    damage(state, 'flange', 'cockedOnStuds', events);
  }
  if (!assembly.covered.engineHole && !assembly.areaClean) dirt(state, 'engineHole', 10, events);
  assembly.covered.engineHole = false;
  const canSee = assembly.parts.windowCover !== 'fitted';
  const turnsByHand = pinMoves(def, state);
  const meets =
    Math.abs(pump.turn + condition.pinBend - control.fork) * def.pump.pinArm < def.pump.slotWidth / 4;
  pump.pinInSlot = (guidePin && canSee && turnsByHand) || meets;
  if (pump.pinInSlot && turnsByHand) pump.turn = Math.max(0, control.fork - condition.pinBend);
  pump.rest = null;
  pump.camUp = false;
  state.supply.galleryAir = def.pump.galleryVolume;
}

function pinMoves(def: SetDefinition, state: SimState): boolean {
  return (staticFriction(def, state) * def.pump.plungerDiameter) / 2 < def.hand.fingerTwist;
}

function clean(state: SimState, what: string, tool: string, events: SimEvent[]): void {
  const { assembly, condition } = state;
  const fits =
    tool === 'swab' ||
    (tool === 'brush' && what === 'pumpArea') ||
    (tool === 'rag' && (what === 'pumpArea' || what === 'spill' || what === 'shimFace'));
  if (what === 'pumpArea') assembly.areaClean = true;
  if (what === 'spill') state.supply.spilledOutside = 0;
  if (fits && what === 'barrel') assembly.barrelClean = true;
  if (fits && what === 'plunger') assembly.plungerClean = true;
  if (fits && what === 'valve') {
    assembly.valveClean = true;
    condition.seatDirt = 0;
  }
  if (fits && what === 'plunger') condition.armFriction = 0;
  if (assembly.barrelClean && assembly.plungerClean && (what === 'barrel' || what === 'plunger'))
    condition.grit = 0;
  // lint and bristles left on lapped faces do harm later
  if (!fits && (what === 'barrel' || what === 'plunger')) dirt(state, 'lint', 15, events);
  events.push({ kind: 'cleaned', what, with: tool });
}
