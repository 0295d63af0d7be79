import { type Block, loadingForce, storedWork, unloadingForce } from './blockContact.ts';
import {
  type Bond,
  type BondLaw,
  type BondSurface,
  slidingFriction,
  slipBond,
  staticHold,
  workBond,
} from './bond.ts';
import { type Support, supportForce } from './supports.ts';

/** Return spring against the plunger, pressing it towards the cam; N at the seated end, N/m. */
export interface ReturnSpring {
  readonly preload: number;
  readonly rate: number;
}

/** The parts that move inside the body: plunger, cup and their share of the spring. */
export interface Plunger {
  /** kg. */
  readonly mass: number;
  /** m, 0 = seated at the cam end, positive towards the outlet. */
  readonly travel: number;
  /** Travel at the two stops, m. */
  readonly seated: number;
  readonly top: number;
  /** null = taken out. */
  readonly spring: ReturnSpring | null;
  readonly bond: Bond;
  readonly law: BondLaw;
  readonly surface: BondSurface;
  /** Friction that never works loose, N. */
  readonly extra: number;
  /** Fuel or solvent in the gap. */
  readonly wet: boolean;
}

/** One blow. */
export interface StrikeInput {
  /** kg, m/s. */
  readonly hammerMass: number;
  readonly hammerSpeed: number;
  readonly block: Block;
  readonly struckEnd: 'cam' | 'outlet';
  /** What the block or the hammer lands on: the body's end face, or the plunger itself (foot, cup, nose). */
  readonly onto: 'body' | 'plunger';
  readonly support: Support;
  /** Without the moving parts, kg. */
  readonly bodyMass: number;
  /** null = out of the body. */
  readonly plunger: Plunger | null;
}

/** Hammer, body and plunger at one instant of a blow; positions m along the pump's axis, positive towards the outlet. */
export interface StrikeMotion {
  time: number;
  hammer: number;
  hammerSpeed: number;
  body: number;
  bodySpeed: number;
  /** Plunger in the body, m, and its speed relative to the body, m/s. */
  travel: number;
  slip: number;
  /** 0 = held by the bond; else the sense in which it slides. */
  sliding: -1 | 0 | 1;
  bond: Bond;
  /** Deepest compression of the block, m; the hammer is lifted away when it parts from it. */
  deepest: number;
  touching: boolean;
  /** Force of the block now, N. */
  force: number;
  /** What drives the plunger in the body's frame and only the bond can hold, N, towards the outlet positive. */
  load: number;
}

/** +1 when the blow goes towards the outlet. */
export function blowSense(input: StrikeInput): 1 | -1 {
  return input.struckEnd === 'cam' ? 1 : -1;
}

/** Everything as it is when the hammer arrives. */
export function startMotion(input: StrikeInput): StrikeMotion {
  return {
    time: 0,
    hammer: 0,
    hammerSpeed: blowSense(input) * input.hammerSpeed,
    body: 0,
    bodySpeed: 0,
    travel: input.plunger?.travel ?? 0,
    slip: 0,
    sliding: 0,
    bond: input.plunger?.bond ?? { shear: 0, fresh: 0, slipped: false },
    deepest: 0,
    touching: true,
    force: 0,
    load: 0,
  };
}

/** Force of the return spring on a plunger at its travel, N, towards the cam. */
export function springPush(spring: ReturnSpring | null, travel: number): number {
  return spring === null ? 0 : spring.preload + spring.rate * travel;
}

/** The part of a drive on the plunger (N) that no stop carries. */
export function unstopped(plunger: Plunger, travel: number, drive: number): number {
  if (drive < 0 && travel <= plunger.seated) return 0;
  if (drive > 0 && travel >= plunger.top) return 0;
  return drive;
}

/** Moves everything on by dt (s): half a drift, the forces there, half a drift; forces are evaluated once a step. */
export function stepMotion(input: StrikeInput, motion: StrikeMotion, dt: number): void {
  drift(motion, dt / 2);
  const sense = blowSense(input);
  const blow = sense * blockForce(input, motion, sense);
  const held = -sense * supportForce(input.support, sense * motion.body, sense * motion.bodySpeed);
  motion.hammerSpeed -= (blow / input.hammerMass) * dt;
  const onPlunger = input.onto === 'plunger' ? blow : 0;
  const onBody = blow - onPlunger + held;
  const plunger = input.plunger;
  if (plunger === null) motion.bodySpeed += (onBody / input.bodyMass) * dt;
  else kick(input.bodyMass, plunger, motion, onBody, onPlunger, dt);
  drift(motion, dt / 2);
  if (plunger !== null && motion.sliding !== 0) stopAtEnds(input.bodyMass, plunger, motion);
  motion.time += dt;
}

function drift(motion: StrikeMotion, dt: number): void {
  motion.hammer += motion.hammerSpeed * dt;
  motion.body += motion.bodySpeed * dt;
  motion.travel += motion.slip * dt;
}

function blockForce(input: StrikeInput, motion: StrikeMotion, sense: number): number {
  motion.force = 0;
  if (!motion.touching) return 0;
  const target =
    input.onto === 'plunger' ? motion.body + motion.travel - (input.plunger?.travel ?? 0) : motion.body;
  const x = sense * (motion.hammer - target);
  if (x >= motion.deepest) {
    motion.deepest = x;
    motion.force = loadingForce(input.block, x);
  } else {
    motion.force = unloadingForce(input.block, x, motion.deepest);
    motion.touching = motion.force > 0;
  }
  return motion.force;
}

/** Changes the speeds of body and plunger: as one mass while the bond holds, else with friction between them. */
function kick(
  bodyMass: number,
  plunger: Plunger,
  motion: StrikeMotion,
  onBody: number,
  onPlunger: number,
  dt: number,
): void {
  const spring = springPush(plunger.spring, motion.travel);
  if (motion.sliding === 0) {
    const together = (onBody + onPlunger) / (bodyMass + plunger.mass);
    motion.load = unstopped(plunger, motion.travel, onPlunger - spring - plunger.mass * together);
    if (Math.abs(motion.load) <= staticHold(motion.bond, plunger.surface, plunger.extra)) {
      motion.bodySpeed += together * dt;
      return;
    }
    motion.sliding = motion.load > 0 ? 1 : -1;
    motion.bond = slipBond(motion.bond, plunger.law);
  } else motion.load = 0;
  const friction =
    -motion.sliding *
    slidingFriction(motion.bond, plunger.law, plunger.surface, plunger.extra, Math.abs(motion.slip));
  const ofBody = (onBody + spring - friction) / bodyMass;
  const ofPlunger = (onPlunger - spring + friction) / plunger.mass;
  motion.bodySpeed += ofBody * dt;
  motion.slip += (ofPlunger - ofBody) * dt;
  if (motion.slip * motion.sliding <= 0) joinPlunger(bodyMass, plunger, motion);
  else motion.bond = workBond(motion.bond, plunger.law, motion.slip * dt, plunger.wet);
}

function stopAtEnds(bodyMass: number, plunger: Plunger, motion: StrikeMotion): void {
  const inside = Math.min(plunger.top, Math.max(plunger.seated, motion.travel));
  if (inside === motion.travel) return;
  motion.travel = inside;
  joinPlunger(bodyMass, plunger, motion);
}

/** The plunger comes to rest in the body: momentum is kept, the energy of the slip is not. */
function joinPlunger(bodyMass: number, plunger: Plunger, motion: StrikeMotion): void {
  motion.bodySpeed += (plunger.mass * motion.slip) / (bodyMass + plunger.mass);
  motion.slip = 0;
  motion.sliding = 0;
}

/** Energy of everything that moves or is sprung, J, measured from the return spring unloaded at travel 0. */
export function motionEnergy(input: StrikeInput, motion: StrikeMotion): number {
  const sense = blowSense(input);
  const sunk = sense * motion.body;
  const sprung = input.support.oneSided && sunk < 0 ? 0 : 0.5 * input.support.stiffness * sunk * sunk;
  const moving =
    0.5 * input.hammerMass * motion.hammerSpeed * motion.hammerSpeed +
    0.5 * input.bodyMass * motion.bodySpeed * motion.bodySpeed;
  const target =
    input.onto === 'plunger' ? motion.body + motion.travel - (input.plunger?.travel ?? 0) : motion.body;
  const block = motion.touching
    ? storedWork(input.block, sense * (motion.hammer - target), motion.deepest)
    : 0;
  if (input.plunger === null) return moving + sprung + block;
  const speed = motion.bodySpeed + motion.slip;
  const spring = input.plunger.spring;
  const wound =
    spring === null ? 0 : spring.preload * motion.travel + 0.5 * spring.rate * motion.travel * motion.travel;
  return moving + sprung + block + 0.5 * input.plunger.mass * speed * speed + wound;
}
