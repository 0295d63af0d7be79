import type { Bond } from '../laws/bond.ts';
import type { JointId, OpeningId, PartId, PlaceId, RestId, SolventId } from './commands.ts';

/** Length of one model step, s. The clock is an integer number of these. */
export const STEP = 0.01;

/** Crank and cylinder. theta: crank angle, rad, -2pi..2pi, 0 = firing top dead centre. */
export interface EngineState {
  theta: number;
  /** rad/s, positive in the running sense. */
  omega: number;
  /** Gas in the cylinder: kg, K, Pa (absolute). */
  mass: number;
  temperature: number;
  pressure: number;
  /** Livengood-Wu integral since the first spray of this cycle; fires at 1. */
  delayIntegral: number;
  /** Spray seen in this cycle. */
  sprayed: boolean;
  /** Fuel in the cylinder that has not burnt yet, m3. */
  fuelWaiting: number;
  /** Crank angle at which this cycle's fire began; null = not lit. */
  firedAt: number | null;
  /** Fuel burnt in this cycle, m3. */
  burnt: number;
  running: boolean;
  /** Fired cycles in succession. */
  firings: number;
  /** Share of the air inlet that is blocked, 0..1 (board, dirt). */
  inletBlocked: number;
  /** Time run above the overspeed limit, s: valve gear bears only so much of it. */
  strain: number;
  wrecked: boolean;
}

/** Pump plunger and its chamber. travel: m, 0 = seated at the cam end, positive towards the outlet. */
export interface PumpState {
  travel: number;
  speed: number;
  /** Rotation of the plunger, rad, 0 = stop groove at the port. */
  turn: number;
  pinInSlot: boolean;
  turnedHalf: boolean;
  bond: Bond;
  /** Force between cam and cup, N. */
  camForce: number;
  /** Fuel and air in the chamber, m3 at ambient pressure; pressure Pa absolute. */
  liquid: number;
  air: number;
  pressure: number;
  /** Volume that the delivery valve's collar has moved out of the chamber, m3 (0 = seated, retraction = open). */
  collar: number;
  /** Where the loose pump is, and how it is held; on the engine: null. */
  rest: RestId | null;
  camUp: boolean;
  /** Solvent standing in the pair. */
  solvent: SolventId | null;
  /** Fuel-wet (true) or dry surfaces. */
  wet: boolean;
}

export interface LineState {
  liquid: number;
  air: number;
  pressure: number;
  needleOpen: boolean;
  /** Sprayed in the present cycle and in all, m3; openings counted (creaks). */
  injectedCycle: number;
  injectedTotal: number;
  openings: number;
  /** Last that came out of a slack joint: m3 of fuel and of air in the last stroke. */
  seenFuel: number;
  seenAir: number;
}

export interface SupplyState {
  tank: number;
  tapOpen: boolean;
  capVented: boolean;
  water: number;
  /** Air in hose and gallery, m3. */
  galleryAir: number;
  /** Fuel run to waste so far, m3, and how much of it into no tray. */
  /** Fuel taken while the cap's vent was shut, m3. */
  drawn: number;
  spilled: number;
  spilledOutside: number;
}

export interface ControlState {
  /** 0..1 */
  throttle: number;
  stopLever: 'run' | 'stop';
  decompressorHeld: boolean;
  /** Governor fork, as the plunger turn it asks for, rad. */
  fork: number;
}

export interface PullTally {
  effort: string;
  restAngle: number;
  held: boolean;
  peakForce: number;
  peakSpeed: number;
  work: number;
  turned: number;
  topsPassed: number;
  strokes: number;
  creaks: number;
  injected: number;
  fired: boolean;
  fuelAtSlack: number;
  airAtSlack: number;
}

export interface HandState {
  /** Cord: m of rope out, m/s, and the pull under way. */
  rope: number;
  pull: { strength: number; force: number; letGoAt: number | null; elapsed: number; blocked: number } | null;
  returning: boolean;
  /** What the pull under way has come to; told when the crank rests or the engine runs. */
  tally: PullTally | null;
  /** Slow turning by hand: turn still to make, rad; s since the start; greatest torque met, N.m. */
  flywheel: { left: number; elapsed: number; torque: number; untilStop: boolean } | null;
  /**
   * Hand on the plunger: where the hand is (m), its twist (N.m), the force felt (N, positive towards the outlet),
   * a steady push (N) and the time left of it (s), turning (rad/s), travel and turn at the start (m, rad), greatest
   * force and twist (N, N.m), least and greatest travel (m), work done against friction (J), how often it let go.
   */
  grasp: {
    travel: number;
    twist: number;
    force: number;
    push: number;
    left: number | null;
    turning: number;
    start: number;
    startTurn: number;
    peak: number;
    peakTwist: number;
    low: number;
    high: number;
    rubbed: number;
    breaks: number;
  } | null;
}

export interface JointState {
  /** Last torque, N.m; clamp, N. */
  torque: number;
  clamp: number;
  at: 'tight' | 'slack' | 'off';
  ruined: boolean;
}

export interface AssemblyState {
  parts: Record<PartId, 'fitted' | 'tray' | 'bench' | 'lost'>;
  joints: Record<JointId, JointState>;
  covered: Record<OpeningId, boolean>;
  /** Clean enough to open. */
  areaClean: boolean;
  barrelClean: boolean;
  plungerClean: boolean;
  valveClean: boolean;
  shimThickness: number;
  newWasher: boolean;
  pairOrdered: boolean;
  /** The pair has been replaced. */
  pairNew: boolean;
}

/** What a fault or an act has made of the parts; nothing here is ever read as 'which fault is it'. */
export interface ConditionState {
  radialClearance: number;
  /** Friction that does not work loose, N: grit, squeeze, bruise. */
  grit: number;
  squeeze: number;
  bruise: number;
  helixChipped: number;
  /** Permanent bend of the control pin, rad. */
  pinBend: number;
  springFactor: number;
  seatLeak: number;
  /** Leak past what lies under the delivery valve, m3/s/Pa; cleaning takes it away. */
  seatDirt: number;
  guideLeak: number;
  openingPressure: number;
  nozzleBlocked: number;
  /** Pressure that it takes to move a needle dragging in its guide, Pa. */
  needleFriction: number;
  /** Leak of a cracked pipe, m3/s/Pa. */
  pipeLeak: number;
  ringOrifice: number;
  decompressorGap: number;
  /** Leak past the engine's valves as holes, m2. */
  inletValveLeak: number;
  exhaustValveLeak: number;
  elementBlocked: number;
  exhaustBlocked: number;
  filterBlocked: number;
  /** Share of air in what is drawn past a hose that does not seal. */
  hoseAirLeak: number;
  governorSeized: number;
  /** What it takes to turn the control arm in its seat, beyond the plunger, N.m. */
  armFriction: number;
  /** Lift lost at cup and cam, m. */
  camWear: number;
  /** Share of petrol in the fuel, and the temperature below which wax comes out of it, K. */
  petrol: number;
  cloudPoint: number;
  ambient: number;
}

export type HurtKind =
  | 'jetIntoSkin'
  | 'kickBack'
  | 'flyingCup'
  | 'chipInEye'
  | 'backFeed'
  | 'fire'
  | 'fumes'
  | 'crushedFinger'
  | 'back';
export interface Damage {
  part: string;
  what: string;
  at: number;
}
export interface Hurt {
  what: HurtKind;
  at: number;
}

/** The whole set at one instant: plain data, nothing hidden elsewhere. */
export interface SimState {
  step: number;
  /** Seed of every natural scatter; scatter is keyed by (seed, check, repeat). */
  seed: number;
  /** How often each check was made. */
  repeats: Record<string, number>;
  place: Record<PlaceId, boolean>;
  engine: EngineState;
  pump: PumpState;
  line: LineState;
  supply: SupplyState;
  control: ControlState;
  hand: HandState;
  assembly: AssemblyState;
  condition: ConditionState;
  damage: Damage[];
  hurt: Hurt[];
}
