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
