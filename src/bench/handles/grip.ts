import type { JointId, PartId } from '../../sim/set/commands.ts';
import type { SimState } from '../../sim/set/state.ts';
import { partAt } from './carry.ts';
import { hammerOfPiece } from './hammer.ts';
import { jointOfPiece, turns } from './spanner.ts';

/** What a drag on a piece takes hold of. */
export type Grip =
  | { readonly kind: 'cord' | 'throttle' | 'hammer' | 'pin' | 'pump' | 'plunger' }
  | { readonly kind: 'joint'; readonly joint: JointId }
  | { readonly kind: 'part'; readonly part: PartId };

const onLoosePump: ReadonlySet<string> = new Set([
  'pumpBody',
  'barrel',
  'plunger',
  'cup',
  'retainer',
  'pin',
  'holder',
  'valveSeat',
  'springPlate',
  'returnSpring',
  'windowCover',
  'bleedScrew',
  'woodBlock',
]);

/** Tools that press on the pin. */
const ON_PIN = ['hand', 'lever', 'pliers'];

/**
 * What would be taken hold of with a tool at a piece; null where a drag only walks the viewer round.
 *
 * `isBlockOn`: the wooden block lies on the pump.
 */
export function gripFor(
  sim: Readonly<SimState>,
  tool: string,
  piece: string,
  isBlockOn: boolean,
): Grip | null {
  const loose = sim.pump.rest !== null;
  if (piece === 'cordHandle' || piece === 'cord') return { kind: 'cord' };
  if (piece === 'throttle' || piece === 'quadrant') return { kind: 'throttle' };
  const isStruck = onLoosePump.has(piece) && (piece !== 'woodBlock' || isBlockOn);
  if (loose && hammerOfPiece[tool] !== undefined && isStruck) return { kind: 'hammer' };
  const joint = jointOfPiece[piece];
  if (joint !== undefined && turns(tool, joint)) return { kind: 'joint', joint };
  if (piece === 'pin' && ON_PIN.includes(tool)) return { kind: 'pin' };
  return tool === 'hand' ? handGrip(sim, piece, loose) : null;
}

function handGrip(sim: Readonly<SimState>, piece: string, loose: boolean): Grip | null {
  const { parts } = sim.assembly;
  if (piece === 'pumpBody' && loose) return { kind: 'pump' };
  const part = partAt(piece);
  if (part === null) return null;
  const sprung = parts.cup === 'fitted' || parts.returnSpring === 'fitted';
  const isPlunger =
    loose &&
    parts.plunger === 'fitted' &&
    ((part === 'plunger' && sprung) || (part === 'cup' && parts.retainer === 'fitted'));
  return isPlunger ? { kind: 'plunger' } : { kind: 'part', part };
}
