import { PerspectiveCamera, Vector3 } from 'three';
import type { SetDefinition } from '../sim/set/definition.ts';
import type { SimState } from '../sim/set/state.ts';
import { fuelPlaces } from './engine/fuel.ts';
import { dimsOf } from './form/dims.ts';
import { pulledApart } from './rig/posePump.ts';
import { injectorSeat, onSet } from './rig/setPieces.ts';
import {
  ANVIL_AT,
  CLOTH_AT,
  HAND_AT,
  pumpAtRest,
  pumpOnEngine,
  SET_AT,
  TRAY_AT,
  VICE_AT,
} from './rig/spots.ts';

/** A way of looking: what is in the middle, from which side (unit), how large a ball must fit the picture (m). */
export type Look = {
  readonly at: Vector3;
  readonly from: Vector3;
  readonly radius: number;
  /** Half of the width that must fit (m), where it is not about the radius. */
  readonly wide?: number;
  /** Middle of a picture that is taller than wide, where it is another. */
  readonly tallAt?: Vector3;
};

/** The strip at the picture's top that the ways to look lie over, CSS pixels. */
const STRIP = 46;

const look = (at: Vector3, azimuth: number, height: number, radius: number): Look => {
  const a = (azimuth * Math.PI) / 180;
  const h = (height * Math.PI) / 180;
  return { at, from: new Vector3(Math.sin(a) * Math.cos(h), Math.sin(h), Math.cos(a) * Math.cos(h)), radius };
};

/** Names of all viewpoints. */
export const viewIds = [
  'set',
  'pump',
  'window',
  'injector',
  'fuel',
  'bench',
  'camEnd',
  'outletEnd',
  'section',
  'apart',
] as const;

/** The look for a viewpoint; angles in degrees from the front and above the level. Unknown names show the whole set. */
export function lookFor(def: SetDefinition, view: string, sim: Readonly<SimState>): Look {
  const loose = sim.pump.rest !== null;
  const pump = pumpMiddle(def, sim);
  const up = sim.pump.camUp ? 1 : -1;
  // An end that is down is looked at from below in the hand, and from over the bench where the pump stands on it.
  const under = sim.pump.rest === 'hand' ? -22 : 5;
  switch (view) {
    case 'pump':
      return look(onDeck(def), -14, 20, 0.105);
    case 'window':
      return loose ? look(pump, 0, 10, 0.05) : look(windowMiddle(def), -2, 11, 0.031);
    case 'injector':
      return look(onSet(injectorSeat(def).at).p.add(new Vector3(0.01, 0.035, 0.02)), -24, 24, 0.09);
    case 'fuel':
      return look(onSet(fuelPlaces(def).bowl).p.add(new Vector3(-0.01, 0.09, 0)), 10, 12, 0.2);
    case 'bench':
      return loose ? look(benchMiddle(sim), 6, 30, 0.23) : look(new Vector3(0.42, 0.03, 0.16), 8, 34, 0.27);
    case 'camEnd':
      return loose ? look(pump, -12, up > 0 ? 36 : under, 0.075) : look(onDeck(def, 0.001), 32, 11, 0.05);
    case 'outletEnd':
      return loose ? look(pump, -12, up < 0 ? 36 : under, 0.075) : look(onDeck(def, 0.098), -20, 48, 0.052);
    case 'section':
      // From the right, past the fork: the lobe is seen in profile under the cup, and the helix on the plunger's front.
      return look(pump.clone().add(new Vector3(0, loose ? 0 : -0.008, 0)), 35, 12, 0.077);
    case 'apart':
      return rowLook(def, sim);
    default:
      return {
        ...look(new Vector3(0.055, 0.215, 0.03), -16, 17, 0.5),
        tallAt: new Vector3(SET_AT.x + 0.05, 0.2, SET_AT.z + 0.08),
      };
  }
}

function pumpMiddle(def: SetDefinition, sim: Readonly<SimState>): Vector3 {
  switch (sim.pump.rest) {
    case null:
      return onDeck(def);
    case 'hand':
      return new Vector3(HAND_AT.x, HAND_AT.y + 0.05, HAND_AT.z);
    case 'cloth':
      return new Vector3(CLOTH_AT.x, 0.06, CLOTH_AT.z);
    case 'anvil':
      return new Vector3(ANVIL_AT.x, 0.1, ANVIL_AT.z);
    case 'tray':
      return new Vector3(TRAY_AT.x - 0.08, 0.02, TRAY_AT.z - 0.04);
    default:
      return new Vector3(VICE_AT.x - 0.03, 0.15, VICE_AT.z + 0.02);
  }
}

/** The whole row of a pump that is pulled apart, with what it came out of. */
function rowLook(def: SetDefinition, sim: Readonly<SimState>): Look {
  const { rest, camUp } = sim.pump;
  const { low, high, lift } = pulledApart;
  const holder = dimsOf(def, 'holder');
  const isClosed = sim.assembly.parts.holder === 'fitted';
  const outlet = isClosed ? holder('from') + holder('length') : dimsOf(def, 'body')('length');
  const home = rest === null ? pumpOnEngine(def, 0) : pumpAtRest(def, rest, camUp, outlet);
  // On the engine the deck below the row belongs to the picture.
  const from = rest === null ? -lift - 0.012 : low - 0.008;
  const along = new Vector3(0, (from + high) / 2, 0).applyQuaternion(home.q);
  const half = (high - from) / 2 + 0.006;
  const lies = rest === 'tray';
  return {
    ...look(
      home.p
        .clone()
        .add(along)
        .add(new Vector3(0, lift, 0)),
      rest === null ? 9 : -8,
      7,
      lies ? 0.09 : half,
    ),
    wide: lies ? half : 0.07,
  };
}

/** A height over the engine's deck on the pump's axis; without one its middle. */
function onDeck(def: SetDefinition, height = 0.05): Vector3 {
  const deck = dimsOf(def, 'deck');
  return onSet([deck('side'), deck('height') + height, deck('front')]).p;
}

function benchMiddle(sim: Readonly<SimState>): Vector3 {
  return sim.pump.rest === 'vice' || sim.pump.rest === 'viceBody'
    ? new Vector3(0.66, 0.08, 0.2)
    : new Vector3(0.43, 0.07, 0.16);
}

function windowMiddle(def: SetDefinition): Vector3 {
  const deck = dimsOf(def, 'deck');
  const body = dimsOf(def, 'body');
  return new Vector3(
    SET_AT.x + deck('side'),
    deck('height') - body('flangeFromCamEnd') + body('windowFromCamEnd') + body('windowHeight') / 2,
    SET_AT.z + deck('front') + body('windowFace'),
  );
}

/**
 * Puts the eye so far away that the look fits the picture below the strip at its top; in a tall one the set stands in
 * the middle.
 */
export function shotFrom(
  look: Look,
  camera: unknown,
  size: { width: number; height: number },
  at: Vector3,
  eye: Vector3,
): void {
  if (!(camera instanceof PerspectiveCamera)) return;
  const free = Math.max(0.5, 1 - STRIP / size.height);
  const tall = Math.tan((camera.fov * Math.PI) / 360);
  const vertical = Math.atan(tall * free);
  const horizontal = Math.atan((tall * size.width) / size.height);
  const distance =
    look.wide === undefined
      ? look.radius / Math.sin(Math.min(vertical, horizontal * 1.25))
      : Math.max(look.radius / Math.sin(vertical), look.wide / Math.sin(horizontal));
  at.copy(look.at);
  if (size.width / size.height < 1.25 && look.tallAt !== undefined) at.copy(look.tallAt);
  // The middle of the free part lies below the middle of the picture.
  up.set(0, 1, 0).addScaledVector(look.from, -look.from.y).normalize();
  at.addScaledVector(up, (1 - free) * tall * distance);
  eye.copy(at).addScaledVector(look.from, distance);
}

const up = new Vector3();

/** How near the eye may come to the wall and, over the bench, to its top, m. */
const WALL_AT = -1.08;
const LEAST_HEIGHT = 0.02;
/** Nearer than this to what it looks at, the eye is over the bench; from farther off it may look along it, m. */
const OVER_BENCH = 0.75;
const ALONG_BENCH = 1.62;

/**
 * How far the eye may be walked round a place at a distance: down to `lowest` from straight above and `widest` either
 * way from the front, rad, so that it neither passes through the wall nor dips into the bench.
 */
export function limitsAt(
  at: Vector3,
  distance: number,
  fromAbove: number,
): { readonly lowest: number; readonly widest: number } {
  const down = distance < OVER_BENCH ? (LEAST_HEIGHT - at.y) / distance : Math.cos(ALONG_BENCH);
  const back = (WALL_AT - at.z) / (distance * Math.max(0.1, Math.sin(fromAbove)));
  return {
    lowest: Math.acos(Math.max(-0.99, Math.min(0.9, down))),
    widest: back <= -1 ? Number.POSITIVE_INFINITY : Math.acos(back),
  };
}
