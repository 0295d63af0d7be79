/**
 * Bulk modulus of a liquid with free gas in an elastic pipe, Pa.
 *
 * liquidBulk Pa; gasFraction by volume AT the pressure; gasBulk Pa (n p for a gas of exponent n);
 * diameterOverWall -, youngs Pa (pass Infinity for a rigid pipe). Compliances add.
 */
export function freeAirModulus(
  liquidBulk: number,
  gasFraction: number,
  gasBulk: number,
  diameterOverWall: number,
  youngs: number,
): number {
  return 1 / (1 / liquidBulk + gasFraction / gasBulk + diameterOverWall / youngs);
}

/**
 * Speed of sound in a bubbly liquid below the bubbles' own frequency, m/s (Wood).
 *
 * gasFraction by volume 0..1; densities kg/m3; speeds of sound of the pure gas and liquid m/s.
 */
export function mixtureSoundSpeed(
  gasFraction: number,
  gasDensity: number,
  gasSpeed: number,
  liquidDensity: number,
  liquidSpeed: number,
): number {
  const density = gasFraction * gasDensity + (1 - gasFraction) * liquidDensity;
  const compliance =
    gasFraction / (gasDensity * gasSpeed * gasSpeed) +
    (1 - gasFraction) / (liquidDensity * liquidSpeed * liquidSpeed);
  return 1 / Math.sqrt(density * compliance);
}
