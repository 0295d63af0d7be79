import { flowApproach, loadingForce, residualDepth, type SteelFace } from './blockContact.ts';
import { PI, pow } from './maths.ts';

/** Spring-like blow of a mass on a fixed target. */
export interface Blow {
  /** N. */
  readonly force: number;
  /** Length of the contact, s. */
  readonly duration: number;
}

/** Blow through an elastic block on a fixed target: F = v sqrt(k m), half a period; kg, m/s, N/m. */
export function blockBlow(mass: number, speed: number, stiffness: number): Blow {
  return { force: speed * Math.sqrt(stiffness * mass), duration: PI * Math.sqrt(mass / stiffness) };
}

/** Steel on steel. */
export interface SteelBlow extends Blow {
  /** Greatest Hertz pressure if nothing yielded, Pa. */
  readonly pressure: number;
  /** Force with the pressure capped by the softer part's flow, N; equal to `force` while elastic. */
  readonly cappedForce: number;
  /** Dent left, m. */
  readonly dent: number;
}

/** Force of an elastic ball contact that takes up the energy of a blow, N: F = K^0.4 (1.25 m v^2)^0.6. Johnson, Contact Mechanics, ch. 11 (from memory). */
export function hertzBlowForce(mass: number, speed: number, modulus: number, radius: number): number {
  const stiffness = (4 / 3) * modulus * Math.sqrt(radius);
  return pow(stiffness, 0.4) * pow(1.25 * mass * speed * speed, 0.6);
}

/** Greatest pressure of a ball contact under a force (N), Pa: (6 F E*^2/(pi^3 R^2))^(1/3). */
export function hertzPressure(force: number, modulus: number, radius: number): number {
  return pow((6 * force * modulus * modulus) / (PI * PI * PI * radius * radius), 1 / 3);
}

/** Force at which the softer part first yields below the surface, N: pressure 1.6 Y. Johnson ch. 6 (from memory). */
export function firstYieldForce(yieldStress: number, modulus: number, radius: number): number {
  const p = 1.6 * yieldStress;
  return (PI * PI * PI * radius * radius * p * p * p) / (6 * modulus * modulus);
}

/** Speed of a hammer at which the softer part first yields, m/s; inverse of `hertzBlowForce`. */
export function firstYieldSpeed(mass: number, yieldStress: number, modulus: number, radius: number): number {
  const stiffness = (4 / 3) * modulus * Math.sqrt(radius);
  const force = firstYieldForce(yieldStress, modulus, radius);
  return Math.sqrt(pow(force / pow(stiffness, 0.4), 1 / 0.6) / (1.25 * mass));
}

/** A bare hammer face on a fixed steel part: what it would do elastically, and what flow makes of it; kg, m/s. */
export function steelBlow(mass: number, speed: number, face: SteelFace): SteelBlow {
  const force = hertzBlowForce(mass, speed, face.modulus, face.radius);
  const stiffness = (4 / 3) * face.modulus * Math.sqrt(face.radius);
  const approach = pow(force / stiffness, 2 / 3);
  const deepest = deepestApproach(mass, speed, face);
  return {
    force,
    // 2.943 = the contact time of an elastic impact in units of approach over speed (Johnson ch. 11, from memory).
    duration: speed > 0 ? (2.943 * approach) / speed : 0,
    pressure: hertzPressure(force, face.modulus, face.radius),
    cappedForce: loadingForce(face, deepest),
    dent: residualDepth(face, deepest),
  };
}

/** How far a hammer presses a steel contact in before it has spent its energy, m. */
function deepestApproach(mass: number, speed: number, face: SteelFace): number {
  const energy = 0.5 * mass * speed * speed;
  const flow = flowApproach(face);
  const flowForce = loadingForce(face, flow);
  const elastic = 0.4 * flowForce * flow;
  if (energy <= elastic) return pow(energy / (elastic > 0 ? elastic : 1), 0.4) * flow;
  // Beyond it the force grows in a straight line: solve F x + s x^2/2 = what is left.
  const slope = PI * face.radius * face.flowPressure;
  const left = energy - elastic;
  return flow + (2 * left) / (flowForce + Math.sqrt(flowForce * flowForce + 2 * slope * left));
}

/** Whether a bare blow chips a hardened edge (plunger foot, helix): its Hertz pressure makes even hard steel yield, and an edge has nothing beside it to hold the yielding metal. */
export function chipsHardEdge(blow: SteelBlow, hardYield: number): boolean {
  return blow.pressure >= 1.6 * hardYield;
}
