import { PI } from './maths.ts';

/** Wood between hammer and pump: a spring that gives back only e^2 of the work done on it. */
export interface WoodBlock {
  readonly kind: 'wood';
  /** N/m; E A/t. Cross grain is about a tenth of end grain. */
  readonly stiffness: number;
  /** Coefficient of restitution e, 0 < e <= 1. */
  readonly restitution: number;
}

/** A bare rounded hammer face on steel: Hertz until the pressure that makes the softer part flow. */
export interface SteelFace {
  readonly kind: 'steel';
  /** Contact modulus E*, Pa. */
  readonly modulus: number;
  /** Radius of the face, m. */
  readonly radius: number;
  /** Contact pressure at which the softer part flows, Pa; about 3 times its yield stress when fully indented. */
  readonly flowPressure: number;
}

export type Block = WoodBlock | SteelFace;

/** Approach at which a steel contact begins to flow, m: where Hertz's greatest pressure 2 E* sqrt(x/R)/pi reaches it. */
export function flowApproach(face: SteelFace): number {
  const ratio = (PI * face.flowPressure) / (2 * face.modulus);
  return face.radius * ratio * ratio;
}

/** Force of a contact pressed in by x (m) for the first time, N. */
export function loadingForce(block: Block, x: number): number {
  if (x <= 0) return 0;
  if (block.kind === 'wood') return block.stiffness * x;
  const flow = flowApproach(block);
  const hertz = (4 / 3) * block.modulus * Math.sqrt(block.radius);
  if (x <= flow) return hertz * x * Math.sqrt(x);
  // Held at the flow pressure the force grows with the contact's area: pi R p per metre (Thornton 1997, from memory).
  return hertz * flow * Math.sqrt(flow) + PI * block.radius * block.flowPressure * (x - flow);
}

/** Dent left by a contact that was pressed in to `deepest` (m), m; also where the force of unloading ends. */
export function residualDepth(block: Block, deepest: number): number {
  if (deepest <= 0) return 0;
  if (block.kind === 'wood') return deepest * (1 - block.restitution * block.restitution);
  if (deepest <= flowApproach(block)) return 0;
  return deepest - elasticPart(block, deepest);
}

/** Force of a contact now at x (m) that has been pressed in to `deepest` (m, >= x), N. */
export function unloadingForce(block: Block, x: number, deepest: number): number {
  if (block.kind === 'wood') {
    const e2 = block.restitution * block.restitution;
    return Math.max(0, block.stiffness * (deepest - (deepest - x) / e2));
  }
  const spring = deepest <= flowApproach(block) ? deepest : elasticPart(block, deepest);
  const share = (x - deepest + spring) / spring;
  return share > 0 ? loadingForce(block, deepest) * share * Math.sqrt(share) : 0;
}

/** Work that has gone into a contact and can still come out, J. */
export function storedWork(block: Block, x: number, deepest: number): number {
  if (deepest <= 0) return 0;
  if (block.kind === 'wood') {
    const force = unloadingForce(block, x, deepest);
    return (force * force * block.restitution * block.restitution) / (2 * block.stiffness);
  }
  const spring = deepest <= flowApproach(block) ? deepest : elasticPart(block, deepest);
  const share = Math.max(0, (x - deepest + spring) / spring);
  return 0.4 * loadingForce(block, deepest) * spring * share * share * Math.sqrt(share);
}

/**
 * The part of `deepest` that springs back, m: Hertz again, on the crater's flatter radius.
 *
 * Crater radius R F_hertz/F keeps the contact's size through the turn (Thornton 1997, from memory).
 */
function elasticPart(face: SteelFace, deepest: number): number {
  const force = loadingForce(face, deepest);
  // a^2 = R x is the contact's size; F = 4 E* a^3/(3 R'), elastic approach a^2/R'.
  const a = Math.sqrt(face.radius * deepest);
  return (3 * force) / (4 * face.modulus * a);
}
