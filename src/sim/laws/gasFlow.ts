import { exp, ln, pow } from './maths.ts';

/** What depends on the gas alone in orifice flow, worked out once; plain data. */
export type GasOrifice = {
  readonly gamma: number;
  /** J/kg/K */
  readonly gasConstant: number;
  readonly inverseGamma: number;
  /** Downstream/upstream pressure at and below which the flow is choked. */
  readonly criticalRatio: number;
  /** Flow function when choked. */
  readonly choked: number;
  /** Flow function at the pressure ratio where the straight line to zero begins. */
  readonly atLinear: number;
};

/** Above this pressure ratio the root is replaced by a straight line so that small differences are not stiff. */
const LINEAR_FROM = 0.999;

/** Flow function of a perfect gas at pressure ratio pr, not choked. */
function flowFunction(pr: number, gamma: number, inverseGamma: number): number {
  // exp of ln costs under half of pow here, and pr is near 1; one power serves both terms under the root
  const a = exp(inverseGamma * ln(pr));
  return Math.sqrt(((2 * gamma) / (gamma - 1)) * a * (a - pr));
}

/** Prepares orifice flow for one gas: gamma (> 1), gasConstant J/kg/K. */
export function gasOrifice(gamma: number, gasConstant: number): GasOrifice {
  const inverseGamma = 1 / gamma;
  const criticalRatio = pow(2 / (gamma + 1), gamma / (gamma - 1));
  return {
    gamma,
    gasConstant,
    inverseGamma,
    criticalRatio,
    choked: flowFunction(criticalRatio, gamma, inverseGamma),
    atLinear: flowFunction(LINEAR_FROM, gamma, inverseGamma),
  };
}

/**
 * Mass flow through an orifice for a gas prepared by `gasOrifice`, kg/s; the form for hot loops.
 *
 * area m2, cd -, pUp and pDown Pa absolute, tUp K. Zero when pDown >= pUp: the caller picks the upstream side.
 */
export function gasOrificeFlow(
  gas: GasOrifice,
  area: number,
  cd: number,
  pUp: number,
  tUp: number,
  pDown: number,
): number {
  if (!(pUp > pDown) || area <= 0) return 0;
  const pr = pDown / pUp;
  let f: number;
  if (pr <= gas.criticalRatio) f = gas.choked;
  else if (pr > LINEAR_FROM) f = (gas.atLinear * (1 - pr)) / (1 - LINEAR_FROM);
  else f = flowFunction(pr, gas.gamma, gas.inverseGamma);
  return (cd * area * pUp * f) / Math.sqrt(gas.gasConstant * tUp);
}

/**
 * Mass flow of a perfect gas through an orifice, choked or not, kg/s.
 *
 * area m2, cd -, pUp and pDown Pa absolute, tUp K, gamma > 1, gasConstant J/kg/K. Isentropic to the throat;
 * straight line to zero above a pressure ratio of 0.999. Zero when pDown >= pUp.
 */
export function orificeMassFlow(
  area: number,
  cd: number,
  pUp: number,
  tUp: number,
  pDown: number,
  gamma: number,
  gasConstant: number,
): number {
  return gasOrificeFlow(gasOrifice(gamma, gasConstant), area, cd, pUp, tUp, pDown);
}
