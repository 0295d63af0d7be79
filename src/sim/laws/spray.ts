import { pow } from './maths.ts';

/**
 * Weber number of the gas around a jet.
 *
 * gasDensity kg/m3, jet diameter m, speed relative to the gas m/s, surface tension N/m.
 */
export function gasWeber(gasDensity: number, diameter: number, speed: number, tension: number): number {
  return (gasDensity * diameter * speed * speed) / tension;
}

/** Gas Weber number above which a jet breaks into mist at the hole (Reitz and Bracco, from memory). */
export const ATOMISATION_WEBER = 40.3;

/** Liquid of a jet and the gas that it goes into: kg/m3, Pa.s, N/m. */
export interface JetMatter {
  readonly liquidDensity: number;
  readonly liquidViscosity: number;
  readonly gasDensity: number;
  readonly gasViscosity: number;
  readonly tension: number;
}

/**
 * Sauter mean diameter of the drops of a slow diesel jet, m: 4.12 d Re^0.12 We^-0.75 (mu_l/mu_g)^0.54 (rho_l/rho_g)^0.18
 * with the liquid's own Re and We (Hiroyasu, Arai and Tabata, SAE 890464, from memory). Hole d m, jet speed m/s > 0.
 */
export function meanDrop(matter: JetMatter, hole: number, speed: number): number {
  const { liquidDensity, liquidViscosity, gasDensity, gasViscosity, tension } = matter;
  const reynolds = (liquidDensity * speed * hole) / liquidViscosity;
  const weber = (liquidDensity * speed * speed * hole) / tension;
  const viscosities = pow(liquidViscosity / gasViscosity, 0.54);
  const densities = pow(liquidDensity / gasDensity, 0.18);
  return 4.12 * hole * pow(reynolds, 0.12) * pow(weber, -0.75) * viscosities * densities;
}

/** Jet speed at which the drops of `meanDrop` come down to a diameter (m): they go as speed to the power of -1.38; m/s. */
export function speedForDrop(matter: JetMatter, hole: number, drop: number): number {
  return pow(meanDrop(matter, hole, 1) / drop, 1 / 1.38);
}
