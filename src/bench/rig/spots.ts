import type { RestId } from '../../sim/set/commands.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf } from '../form/dims.ts';
import { JAW_TOP } from '../place/vice.ts';
import { type Pose, pose, spun } from './pose.ts';

/** Where the set and the fixed things stand on the bench, m. */
export const SET_AT = { x: -0.24, z: -0.09 } as const;
export const CLOTH_AT = { x: 0.42, z: 0.0 } as const;
export const TRAY_AT = { x: 0.43, z: 0.28 } as const;
export const ANVIL_AT = { x: 0.66, z: 0.02 } as const;
export const VICE_AT = { x: 0.8, z: 0.28 } as const;
export const ROLL_AT = { x: -0.27, z: 0.285 } as const;
/** Board with the switch of the load, at the back of the bench. */
export const LOAD_BOARD_AT = { x: 0.19, z: -0.4 } as const;
/** Where the pump is held, over the bench before the viewer. */
export const HAND_AT = { x: 0.42, y: 0.1, z: 0.27 } as const;
export const TRAY_SIZE = { width: 0.34, depth: 0.22 } as const;

const UPSIDE_DOWN = Math.PI;

/** Pose of the pump's axis foot (its cam end) on the engine, shims under it, m. */
export function pumpOnEngine(def: SetDefinition, shims: number): Pose {
  const deck = dimsOf(def, 'deck');
  const body = dimsOf(def, 'body');
  return pose(
    SET_AT.x + deck('side'),
    deck('height') - body('flangeFromCamEnd') + shims,
    SET_AT.z + deck('front'),
  );
}

/** Pose of the loose pump for each rest; `outlet` is how far its outlet end stands from its cam end, m. */
export function pumpAtRest(def: SetDefinition, rest: RestId, camUp: boolean, outlet: number): Pose {
  const body = dimsOf(def, 'body');
  const flange = body('flangeFromCamEnd');
  const turn = camUp ? UPSIDE_DOWN : 0;
  // The foot of the axis is the cam end; upside down it is at the top.
  const foot = (low: number): number => (camUp ? low + outlet : low);
  const proud = 0.003;
  switch (rest) {
    case 'hand':
      return pose(HAND_AT.x, camUp ? HAND_AT.y + 0.1 : HAND_AT.y, HAND_AT.z, camUp ? -0.16 : 0.16, 0, turn);
    case 'cloth':
      return pose(CLOTH_AT.x - 0.02, foot(0.0105) + (camUp ? 0 : proud), CLOTH_AT.z, 0, 0, turn);
    case 'anvil':
      return pose(ANVIL_AT.x, foot(0.045) + (camUp ? 0 : proud), ANVIL_AT.z, 0, 0, turn);
    case 'vice':
      return pose(
        VICE_AT.x - 0.034,
        camUp ? JAW_TOP + flange : JAW_TOP - flange - body('flangeThickness'),
        VICE_AT.z + body('flangeDepth') / 2,
        0,
        0,
        turn,
      );
    case 'viceBody': {
      const grip = 0.052;
      return pose(
        VICE_AT.x - 0.034,
        camUp ? JAW_TOP - 0.014 + grip : JAW_TOP - 0.014 - grip,
        VICE_AT.z + body('upperRadius'),
        0,
        0,
        turn,
      );
    }
    case 'tray':
      return pose(
        TRAY_AT.x + (camUp ? -0.05 : -0.14),
        0.0215,
        TRAY_AT.z - 0.055,
        0,
        0.25,
        camUp ? Math.PI / 2 : -Math.PI / 2,
      );
  }
}

/** How far the vice's jaws stand open for each rest, m. */
export function viceOpening(def: SetDefinition, rest: RestId | null): number {
  const body = dimsOf(def, 'body');
  if (rest === 'vice') return body('flangeDepth') / 2 + body('windowFace');
  if (rest === 'viceBody') return body('upperRadius') * 2;
  return 0.006;
}

/** Where removed parts lie: in order in the tray, or, long things, on the bench. World poses. */
export const laidOut: Readonly<Record<string, Pose>> = {
  holder: trayed(-0.125, 0.06, 0.011, 0, Math.PI / 2, -0.0735),
  valveSpring: trayed(-0.088, 0.066, 0.0036, 0, Math.PI / 2, -0.0765),
  valve: trayed(-0.058, 0.064, 0.0045, 0, Math.PI / 2, -0.066),
  valveSeat: pose(TRAY_AT.x - 0.028, 0.0022 - 0.066, TRAY_AT.z + 0.07),
  retainer: pose(TRAY_AT.x + 0.012, 0.0022 - 0.0006, TRAY_AT.z + 0.066),
  cup: pose(TRAY_AT.x + 0.055, 0.0022 + 0.003, TRAY_AT.z + 0.062),
  springPlate: pose(TRAY_AT.x + 0.13, 0.0022 - 0.0145, TRAY_AT.z + 0.07),
  returnSpring: pose(TRAY_AT.x + 0.098, 0.0022, TRAY_AT.z + 0.064),
  // On its collar, the pin to the side: groove and helix are seen from above.
  plunger: spun(trayed(0.02, 0.008, 0.0082, 0, Math.PI / 2, 0.0), 1.83),
  shim0: pose(TRAY_AT.x + 0.12, 0.0022, TRAY_AT.z - 0.03, 0, 0.5),
  shim1: pose(TRAY_AT.x + 0.112, 0.00255, TRAY_AT.z - 0.036, 0, 0.7),
  windowCover: pose(TRAY_AT.x + 0.06, 0.0024, TRAY_AT.z - 0.05, -Math.PI / 2, 0.2),
  pumpNut1: pose(TRAY_AT.x + 0.055, 0.0022, TRAY_AT.z - 0.012),
  pumpNut2: pose(TRAY_AT.x + 0.08, 0.0022, TRAY_AT.z + 0.002),
  bleedScrew: pose(TRAY_AT.x + 0.142, 0.0022, TRAY_AT.z + 0.02),
  airCover: pose(0.27, 0.012, -0.2, -Math.PI / 2 + Math.PI, 0.3),
  // Between cloth and bottles, its bent end up.
  pipe: pose(0.335, 0.01, -0.165, Math.PI / 2, Math.PI / 2, 0),
};

/** A part lying on its side in the tray: its own axis along x or z, `radius` above the floor, its height 0 at `start`. */
function trayed(x: number, z: number, radius: number, ry: number, rx: number, start: number): Pose {
  // Laid by turning its axis to the front: height then runs along +z.
  return pose(TRAY_AT.x + x, 0.0022 + radius, TRAY_AT.z + z - 0.02 + start, rx, ry);
}
