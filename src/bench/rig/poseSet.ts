import { Quaternion, Vector3 } from 'three';
import type { SimState } from '../../sim/set/state.ts';
import { throttleAngle } from '../engine/controls.ts';
import { fuelPlaces } from '../engine/fuel.ts';
import { cordGuide } from '../engine/starter.ts';
import { dimsOf } from '../form/dims.ts';
import type { Held } from '../handles/held.ts';
import { bring } from './piece.ts';
import { along, copyPose, type Pose, pose, spun, within } from './pose.ts';
import { type Frame, middleTurn } from './posePump.ts';
import type { Rig } from './rig.ts';
import { onSet } from './setPieces.ts';
import { laidOut, SET_AT, TRAY_AT, VICE_AT, viceOpening } from './spots.ts';

const X = new Vector3(1, 0, 0);
const Z = new Vector3(0, 0, 1);
const turn = new Quaternion();
const target = pose();
/** Where the puller stands: the cord is drawn this way. */
export const CORD_WAY = new Vector3(-0.25, 0.8, 0.545).normalize();
/** How far the handle stands off its eye when the cord is wound in, m. */
const SEATED = 0.021;

/** Places everything that is not the pump; returns whether anything is still on its way. */
export function poseSet(rig: Rig, f: Frame, inHand: string, held: Held): boolean {
  let moving = false;
  const go = (id: string, at: Pose, place: string): void => {
    moving = bring(rig.piece(id), at, place, f.seconds, f.instant) || moving;
  };
  for (const [id, home] of rig.homes) if (!MOVERS.has(id) && !rig.tools.has(id)) go(id, home, 'home');
  const turned = (id: string, axis: Vector3, angle: number, place = 'home'): void => {
    const home = rig.homes.get(id);
    if (home === undefined) return;
    copyPose(target, home);
    target.q.multiply(turn.setFromAxisAngle(axis, angle));
    go(id, target, place);
  };
  const { control, supply } = f.sim;
  turned('flywheel', X, -f.reading.theta);
  turned('camshaft', X, f.reading.camAngle);
  turned('fork', Z, forkAngle(f));
  turned('throttle', Z, throttleAngle(f.reading.throttle));
  turned('stopLever', Z, control.stopLever === 'run' ? 0.34 : -0.34, control.stopLever);
  turned(
    'decompressor',
    X,
    control.decompressorHeld ? 0.5 : -0.12,
    control.decompressorHeld ? 'held' : 'let go',
  );
  turned('tap', Z, supply.tapOpen ? 0 : Math.PI / 2, supply.tapOpen ? 'open' : 'closed');
  turned('cap', new Vector3(0, 1, 0), supply.capVented ? 0.9 : 0, supply.capVented ? 'slack' : 'closed');
  if (supply.capVented) rig.piece('cap').group.position.y += 0.0035;
  moving = poseLine(rig, f) || moving;
  moving = poseHose(rig, f) || moving;
  poseCord(rig, f, held);
  poseFuel(rig, f);
  covers(rig, f.sim, f);
  const airOn = f.sim.assembly.parts.airCover === 'fitted';
  go('airCover', (airOn ? rig.homes.get('airCover') : laidOut.airCover) ?? target, airOn ? 'home' : 'bench');
  rig.piece('airElement').group.visible = !(airOn && rig.piece('airCover').done >= 1 && held.part === null);
  moving = poseVice(rig, f) || moving;
  rig.shown.show(rig, f);
  shiftHeld(rig, held);
  for (const id of rig.tools) {
    const home = rig.homes.get(id);
    if (home === undefined) continue;
    if (held.tool === id) {
      go(id, held.toolAt, 'work');
      rig.piece(id).done = 1;
      continue;
    }
    if (id === 'woodBlock' && held.blockOn !== null) {
      go(id, blockPose(rig, f, held.blockOn), held.blockOn);
      continue;
    }
    copyPose(target, home);
    if (id === inHand) target.p.y += 0.03;
    go(id, target, id === inHand ? 'hand' : 'home');
  }
  return moving;
}

const MOVERS = new Set([
  'flywheel',
  'camshaft',
  'fork',
  'throttle',
  'stopLever',
  'decompressor',
  'tap',
  'cap',
  'cordHandle',
  'airCover',
  'viceSlide',
  'tommyBar',
  'pipe',
]);

/** The fork stands where its slot meets a straight pin turned by what the governor asks for. */
export function forkAngle(f: Frame): number {
  const fork = dimsOf(f.def, 'fork');
  const sideways = fork('radius') * Math.sin(f.reading.fork - middleTurn(f.def));
  return -Math.asin(sideways / (fork('pivotBelow') + dimsOf(f.def, 'pin')('height') + f.reading.travel));
}

function poseLine(rig: Rig, f: Frame): boolean {
  const { parts, joints } = f.sim.assembly;
  const fitted = parts.pipe === 'fitted';
  const home = rig.homes.get('pipe');
  const at = fitted ? home : laidOut.pipe;
  if (at === undefined) return false;
  const pipe = rig.piece('pipe');
  let moving = bring(pipe, at, fitted ? 'home' : 'bench', f.seconds, f.instant);
  for (const [id, nut] of [
    ['pipeAtPump', rig.pipe.nutAtPump],
    ['pipeAtInjector', rig.pipe.nutAtInjector],
  ] as const) {
    within(target, pipe.now, nut);
    const joint = joints[id].at;
    if (joint !== 'tight')
      spun(along(target, joint === 'slack' ? 0.0016 : 0.013), joint === 'slack' ? 5 : 20);
    moving = bring(rig.piece(id), target, joint, f.seconds, f.instant) || moving;
  }
  return moving;
}

function poseHose(rig: Rig, f: Frame): boolean {
  const fitted = f.sim.assembly.parts.hose === 'fitted';
  rig.hoses.on.group.visible = fitted;
  rig.hoses.off.group.visible = !fitted;
  const at = onSet([0, 0, 0]);
  bring(rig.hoses.on, at, 'home', f.seconds, true);
  return bring(rig.hoses.off, at, 'home', f.seconds, true);
}

function poseCord(rig: Rig, f: Frame, held: Held): void {
  const guide = onSet(cordGuide(f.def));
  const handle = rig.piece('cordHandle');
  const cord = rig.piece('cord');
  const out = Math.max(f.reading.rope, held.slackOut) + SEATED;
  turn.setFromUnitVectors(new Vector3(0, 1, 0), CORD_WAY);
  handle.group.position.copy(guide.p).addScaledVector(CORD_WAY, out);
  handle.group.quaternion.copy(turn);
  cord.group.position.copy(guide.p);
  cord.group.quaternion.copy(turn);
  cord.group.scale.set(1, out, 1);
}

function poseFuel(rig: Rig, f: Frame): void {
  const { sight, bowl } = fuelPlaces(f.def);
  const b = dimsOf(f.def, 'bowl');
  const at = onSet(sight.at);
  const stand = (
    piece: { group: { position: Vector3; scale: Vector3 } },
    p: Vector3,
    dy: number,
    tall: number,
  ): void => {
    piece.group.position.set(p.x, p.y + dy, p.z);
    piece.group.scale.set(1, Math.max(1e-4, tall), 1);
  };
  const off = new Vector3(0, 0, 0.009);
  const sightAt = at.p.clone().add(off);
  stand(rig.fuel.sight, sightAt, 0, 1);
  stand(rig.fuel.level, sightAt, 0, sight.height * Math.min(1, f.sim.supply.tank / f.def.supply.tankVolume));
  const bowlAt = onSet(bowl).p;
  stand(rig.fuel.bowl, bowlAt, 0, 1);
  const inside = b('height') - 0.002;
  const water = Math.min(1, f.sim.supply.water / f.def.supply.bowlVolume) * inside;
  stand(rig.fuel.water, bowlAt, -b('height') + 0.0012, water);
  stand(rig.fuel.bowlFuel, bowlAt, -b('height') + 0.0012 + water, inside - water);
}

function covers(rig: Rig, sim: Readonly<SimState>, f: Frame): void {
  const { covered, parts } = sim.assembly;
  const deck = dimsOf(f.def, 'deck');
  const show = (id: string, on: boolean, at: Pose): void => {
    const piece = rig.piece(id);
    piece.group.visible = on;
    piece.group.position.copy(at.p);
    piece.group.quaternion.copy(at.q);
  };
  show(
    'coverEngine',
    covered.engineHole && parts.pump !== 'fitted',
    onSet([deck('side'), deck('height'), deck('front')]),
  );
  const pipe = rig.piece('pipe');
  const ends = covered.pipeEnds && parts.pipe !== 'fitted';
  within(target, pipe.now, rig.pipe.nutAtPump);
  target.q.multiply(turn.setFromAxisAngle(X, Math.PI));
  show('coverPipe1', ends, target);
  within(target, pipe.now, rig.pipe.nutAtInjector);
  target.q.multiply(turn.setFromAxisAngle(X, Math.PI));
  show('coverPipe2', ends, target);
  show('coverHose', covered.hoseEnd && parts.hose !== 'fitted', onSet(rig.hoses.offEnd, Math.PI));
  const holder = rig.piece('holder');
  copyPose(target, holder.now);
  along(target, dimsOf(f.def, 'holder')('from') + dimsOf(f.def, 'holder')('length') - 0.002);
  show('coverHolder', covered.holderEnd && parts.pipe !== 'fitted', target);
}

function poseVice(rig: Rig, f: Frame): boolean {
  const open = viceOpening(f.def, f.sim.pump.rest);
  const slide = pose(VICE_AT.x, 0, VICE_AT.z + open);
  const moving = bring(rig.piece('viceSlide'), slide, `open ${open}`, f.seconds, f.instant);
  const bar = rig.piece('tommyBar');
  bar.group.position.set(VICE_AT.x, 0.072, rig.piece('viceSlide').group.position.z + 0.074);
  bar.group.rotation.set(0, 0, 0.5 + rig.piece('viceSlide').group.position.z * 90);
  return moving;
}

/** Middle of the set and of the tray, for cameras. */
export const landmarks = {
  set: new Vector3(SET_AT.x, 0.2, SET_AT.z),
  tray: new Vector3(TRAY_AT.x, 0.02, TRAY_AT.z),
};

/** The beech block on an end of the loose pump, its relief over the cup. */
function blockPose(rig: Rig, f: Frame, end: 'camEnd' | 'outletEnd'): Pose {
  const body = rig.piece('pumpBody');
  const half = dimsOf(f.def, 'block')('height') / 2;
  const holder = dimsOf(f.def, 'holder');
  const top =
    f.sim.assembly.parts.holder === 'fitted'
      ? holder('from') + holder('length')
      : dimsOf(f.def, 'body')('length');
  return within(
    target,
    body.now,
    pose(0, end === 'outletEnd' ? top + half : -half, 0, end === 'outletEnd' ? 0 : Math.PI),
  );
}

/** Moves what the hand has hold of by the hand's own offset. */
function shiftHeld(rig: Rig, held: Held): void {
  if (held.part === null || held.part === 'pumpBody') return;
  rig.piece(held.part).group.position.add(held.offset);
  if (held.part === 'plunger') rig.piece('pin').group.position.add(held.offset);
}
