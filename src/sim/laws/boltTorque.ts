/** Tightening torque for a clamp force, N m: nut factor -, force N, nominal diameter m. */
export function torqueForClamp(nutFactor: number, clamp: number, diameter: number): number {
  return nutFactor * clamp * diameter;
}

/** Clamp force from a tightening torque, N: torque N m, nut factor -, nominal diameter m. */
export function clampForTorque(torque: number, nutFactor: number, diameter: number): number {
  return torque / (nutFactor * diameter);
}
