/**
 * Volume flow of a liquid through a sharp orifice, m3/s.
 *
 * cd -, area m2, dp Pa, density kg/m3. Zero for dp <= 0: the caller decides which way is downhill.
 */
export function orificeFlow(cd: number, area: number, dp: number, density: number): number {
  return dp > 0 ? cd * area * Math.sqrt((2 * dp) / density) : 0;
}

/** Speed of a liquid jet through a hole of velocity coefficient cv across dp (Pa), m/s; zero for dp <= 0. */
export function jetSpeed(cv: number, dp: number, density: number): number {
  return dp > 0 ? cv * Math.sqrt((2 * dp) / density) : 0;
}
