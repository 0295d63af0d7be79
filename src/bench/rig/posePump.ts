import { Quaternion, Vector3 } from 'three';
import type { PartId } from '../../sim/set/commands.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { JointState, SimState } from '../../sim/set/state.ts';
import { dimsOf } from '../form/dims.ts';
import type { Held } from '../handles/held.ts';
import { bring, showCut } from './piece.ts';
import { along, copyPose, type Pose, pose, spun, within } from './pose.ts';
import { plungerFoot, springFree, springRoom } from './pumpPieces.ts';
import type { Reading } from './reading.ts';
import type { Rig } from './rig.ts';
import { laidOut, pumpAtRest, pumpOnEngine } from './spots.ts';

/** What a frame of the picture is made from. */
export type Frame = {
  readonly def: SetDefinition;
  readonly sim: Readonly<SimState>;
  readonly reading: Reading;
  readonly seconds: number;
  readonly instant: boolean;
  readonly section: boolean;
  readonly apart: number;
  /** Something is in the hand: what it hides when whole may be seen. */
  readonly handled: boolean;
};

/** How far each part slides along the pump's axis when pulled apart, m, from the body: in the order of assembly. */
const SLIDES: Readonly<Record<string, number>> = {
  holder: 0.102,
  valveSpring: 0.079,
  valve: 0.073,
  valveSeat: 0.056,
  barrel: 0.05,
  returnSpring: -0.072,
  springPlate: -0.079,
  plunger: -0.108,
  pin: -0.108,
  cup: -0.124,
  retainer: -0.128,
};
/** How far the body rises when the pump is pulled apart, so that nothing is driven into what it stands on, m. */
const LIFT = 0.156;
/** Ends of the row along the axis, from the body's cam end, and how far the body rises, m. */
export const pulledApart = { low: -0.128, high: 0.216, lift: LIFT };
/** Half of the turn between stop and start: the pin stands before the window's middle there. */
export function middleTurn(def: SetDefinition): number {
  return def.pump.startStroke / (def.pump.plungerDiameter * def.pump.helixTangent);
}

const local = pose();
const target = pose();
const frame = pose();
const UP = new Vector3(0, 1, 0);
const bendTurn = new Quaternion();
const slide = new Vector3();

/** Places the pump and all its parts; returns whether anything is still on its way. */
export function posePump(rig: Rig, f: Frame, held: Held): boolean {
  const { def, sim } = f;
  const parts = sim.assembly.parts;
  const body = rig.piece('pumpBody');
  const rest = sim.pump.rest;
  const outlet =
    parts.holder === 'fitted'
      ? dimsOf(def, 'holder')('from') + dimsOf(def, 'holder')('length')
      : dimsOf(def, 'body')('length');
  const shims = parts.shims === 'fitted' ? sim.assembly.shimThickness : 0;
  const home = rest === null ? pumpOnEngine(def, shims) : pumpAtRest(def, rest, sim.pump.camUp, outlet);
  copyPose(target, home);
  target.p.y += f.apart * LIFT;
  if (held.part === 'pumpBody') target.p.add(held.offset);
  let moving = bring(
    body,
    target,
    rest === null ? 'engine' : `${rest} ${sim.pump.camUp}`,
    f.seconds,
    f.instant,
  );
  copyPose(frame, body.now);
  const put = (id: string, fitted: boolean, at: Pose): void => {
    if (fitted) {
      within(target, frame, at);
      slide.set(0, f.apart * (SLIDES[id] ?? 0), 0);
      target.p.add(slide.applyQuaternion(frame.q));
    } else copyPose(target, laidOut[id] ?? home);
    moving = bring(rig.piece(id), target, fitted ? 'pump' : 'tray', f.seconds, f.instant) || moving;
  };
  const flat = (y = 0): Pose => set(local, 0, y, 0);
  put('barrel', true, flat());
  put(
    'plunger',
    parts.plunger === 'fitted',
    spun(flat(f.reading.travel), f.reading.turn + (sim.pump.turnedHalf ? Math.PI : 0)),
  );
  put('pin', parts.plunger === 'fitted', pinPose(f));
  if (parts.plunger !== 'fitted') followPlunger(rig, f);
  put('cup', parts.cup === 'fitted', flat(f.reading.travel));
  put('retainer', parts.retainer === 'fitted', flat());
  const sprung = parts.returnSpring === 'fitted';
  put('springPlate', sprung, flat(f.reading.travel));
  put('returnSpring', sprung, flat(dimsOf(def, 'returnSpring')('installedFrom') + f.reading.travel));
  rig.coils.returnSpring.setLength(
    sprung && f.apart < 0.5 ? springRoom(def) - f.reading.travel : springFree(def),
  );
  put('valveSeat', parts.valve === 'fitted', flat());
  const valveLift = (0.0015 * sim.pump.collar) / def.pump.retraction;
  put('valve', parts.valve === 'fitted', flat(valveLift));
  const valveSpring = dimsOf(def, 'valveSpring');
  put('valveSpring', parts.valveSpring === 'fitted', flat(valveSpring('from') + valveLift));
  rig.coils.valveSpring.setLength(valveSpring('length') - valveLift);
  put('holder', parts.holder === 'fitted', screwed(flat(), sim.assembly.joints.holder, 0.0015));
  moving = fixings(rig, f, put) || moving;
  showParts(rig, f, frame);
  return moving;
}

const SECTIONED = [
  'pumpBody',
  'barrel',
  'cup',
  'retainer',
  'springPlate',
  'returnSpring',
  'valveSpring',
  'valveSeat',
  'holder',
  'pipeAtPump',
  'shim0',
  'shim1',
  'camBox',
];
/** Parts that nobody sees while the holder is on, and those that nobody sees while the window is shut as well. */
const UNDER_HOLDER: readonly (readonly [string, PartId | null])[] = [
  ['barrel', null],
  ['valveSeat', 'valve'],
  ['valve', 'valve'],
  ['valveSpring', 'valveSpring'],
];
const BEHIND_WINDOW: readonly (readonly [string, PartId | null])[] = [
  ['plunger', 'plunger'],
  ['pin', 'plunger'],
  ['cup', 'cup'],
  ['retainer', 'retainer'],
  ['springPlate', 'returnSpring'],
  ['returnSpring', 'returnSpring'],
  ['fork', null],
  ['camshaft', null],
];
/** What is screwed to the front that a section takes away. */
const ON_FRONT = ['quadrant', 'throttle', 'stopPlate', 'stopLever'];

/** Spares the drawing of what is enclosed: it is half of the pump. */
function hideEnclosed(rig: Rig, f: Frame): void {
  const { parts } = f.sim.assembly;
  const whole = !f.section && f.apart < 1e-3;
  const still = rig.piece('pumpBody').done >= 1 && rig.piece('windowCover').done >= 1;
  const closed = whole && parts.holder === 'fitted';
  const shut = closed && still && f.sim.pump.rest === null && parts.windowCover === 'fitted' && !f.handled;
  const hide = (list: typeof UNDER_HOLDER, isHidden: boolean): void => {
    for (const [id, part] of list) {
      const piece = rig.piece(id);
      piece.group.visible = !(isHidden && piece.done >= 1 && (part === null || parts[part] === 'fitted'));
    }
  };
  hide(UNDER_HOLDER, closed);
  hide(BEHIND_WINDOW, shut);
}

/** Shows parts whole or cut, hides what cannot be seen or is cut away, lays the axis. */
function showParts(rig: Rig, f: Frame, at: Pose): void {
  const { parts } = f.sim.assembly;
  const onEngine = f.sim.pump.rest === null;
  for (const id of SECTIONED) showCut(rig.piece(id), f.section && (onEngine || id !== 'camBox'));
  hideEnclosed(rig, f);
  rig.piece('windowCover').group.visible = !(f.section && parts.windowCover === 'fitted');
  rig.piece('bleedScrew').group.visible = !(f.section && f.sim.assembly.joints.bleedScrew.at !== 'off');
  for (const id of ON_FRONT) rig.piece(id).group.visible = !(f.section && onEngine);
  // The pipe would stand where the parts are drawn out to.
  const line = f.apart < 0.02 || parts.pipe !== 'fitted';
  for (const id of ['pipe', 'pipeAtPump', 'pipeAtInjector']) rig.piece(id).group.visible = line;
  const axis = rig.piece('axis').group;
  axis.visible = f.apart > 1e-3 || f.section;
  axis.position.copy(at.p);
  axis.quaternion.copy(at.q);
  axis.scale.set(1, 0.45 + 0.5 * f.apart, 1);
}

function fixings(rig: Rig, f: Frame, put: (id: string, fitted: boolean, at: Pose) => void): boolean {
  const { def, sim } = f;
  const parts = sim.assembly.parts;
  const joints = sim.assembly.joints;
  const body = dimsOf(def, 'body');
  const cover = set(
    local,
    0,
    body('windowFromCamEnd') + body('windowHeight') / 2,
    body('windowFace') + f.apart * 0.035,
  );
  put('windowCover', parts.windowCover === 'fitted', cover);
  const bleed = set(
    local,
    -Math.SQRT1_2 * body('upperRadius'),
    body('inletHeight'),
    Math.SQRT1_2 * body('upperRadius'),
  );
  bleed.q.setFromAxisAngle(UP, -Math.PI / 4).multiply(TIPPED);
  put(
    'bleedScrew',
    joints.bleedScrew.at !== 'off',
    along(screwed(bleed, joints.bleedScrew, 0.001), f.apart * 0.022),
  );
  let moving = false;
  const onEngine = parts.pump === 'fitted' && sim.pump.rest === null;
  for (const [id, side] of [
    ['pumpNut1', -1],
    ['pumpNut2', 1],
  ] as const) {
    const nut = set(
      local,
      (side * body('studSpacing')) / 2,
      body('flangeFromCamEnd') + body('flangeThickness'),
      0,
    );
    put(id, joints[id].at !== 'off' && onEngine, along(screwed(nut, joints[id], 0.00125), f.apart * 0.03));
  }
  for (const [id, i] of [
    ['shim0', 0],
    ['shim1', 1],
  ] as const) {
    const piece = rig.piece(id);
    const thin = sim.assembly.shimThickness / 2;
    const fitted = parts.shims === 'fitted';
    if (fitted) {
      // Shims lie on the engine's deck whether the pump stands on them or not.
      copyPose(shimAt, pumpOnEngine(def, 0));
      shimAt.p.y += body('flangeFromCamEnd') + thin * i + f.apart * 0.006 * (i + 1);
    } else copyPose(shimAt, laidOut[id] ?? shimAt);
    moving = bring(piece, shimAt, fitted ? 'deck' : 'tray', f.seconds, f.instant) || moving;
    piece.group.visible = sim.assembly.shimThickness > 1e-5;
  }
  return moving;
}

const shimAt = pose();
const TIPPED = new Quaternion().setFromAxisAngle(new Vector3(1, 0, 0), Math.PI / 2);

/** A threaded part as far out as its joint says: slack by a turn, off (but still there) clear of its thread. */
function screwed(at: Pose, joint: JointState, pitch: number): Pose {
  if (joint.at === 'tight') return at;
  const turns = joint.at === 'slack' ? 1.15 : 6;
  return spun(along(at, turns * pitch), turns * 2 * Math.PI);
}

/** The pin in the plunger's collar, bent sideways about the collar's edge by what the model says. */
function pinPose(f: Frame): Pose {
  const { def, sim } = f;
  const pin = dimsOf(def, 'pin');
  const at = set(local, 0, pin('height') + f.reading.travel, 0);
  const angle = f.reading.turn - middleTurn(def) + (sim.pump.turnedHalf ? Math.PI : 0);
  at.q.setFromAxisAngle(UP, angle);
  const bend = sim.condition.pinBend;
  if (bend !== 0) {
    const edge = dimsOf(def, 'plunger')('collarRadius');
    at.p.x += edge * (Math.sin(angle) - Math.sin(angle + bend));
    at.p.z += edge * (Math.cos(angle) - Math.cos(angle + bend));
    at.q.multiply(bendTurn.setFromAxisAngle(UP, bend));
  }
  return at;
}

/** With the plunger out, its pin goes where it goes. */
function followPlunger(rig: Rig, f: Frame): void {
  const plunger = rig.piece('plunger');
  const pin = rig.piece('pin');
  const at = set(local, 0, dimsOf(f.def, 'pin')('height'), 0);
  at.q.setFromAxisAngle(UP, -middleTurn(f.def));
  within(pin.now, plunger.now, at);
  pin.group.position.copy(pin.now.p);
  pin.group.quaternion.copy(pin.now.q);
}

function set(to: Pose, x: number, y: number, z: number): Pose {
  to.p.set(x, y, z);
  to.q.identity();
  return to;
}

/** Height of the plunger's foot, for callers that place things under it. */
export function footHeight(f: Frame): number {
  return plungerFoot(dimsOf(f.def, 'cup')) + f.reading.travel;
}
