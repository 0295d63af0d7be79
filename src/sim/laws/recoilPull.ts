import { PI } from './maths.ts';

/** Energy a steady pull puts into the rope, J: mean force N along travel m. */
export function pullEnergy(meanForce: number, travel: number): number {
  return meanForce * travel;
}

/** Crank speed after a pull with no compression to beat, rad/s: energy J, efficiency 0..1, inertia kg m2. */
export function pullSpeed(energy: number, efficiency: number, inertia: number): number {
  return Math.sqrt((2 * efficiency * energy) / inertia);
}

/** Turns of the crank made by one pull of travel m on a pulley of radius m. */
export function pullTurns(travel: number, pulleyRadius: number): number {
  return travel / (2 * PI * pulleyRadius);
}

/** Energy left in the rotating parts after compression work and friction, J; negative means it stops short. */
export function energyPastTop(speed: number, inertia: number, work: number, friction: number): number {
  return 0.5 * inertia * speed * speed - work - friction;
}
