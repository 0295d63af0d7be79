import type { SimCommand } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import { springForce } from './kinematics.ts';
import { staticFriction } from './pair.ts';
import type { SimState } from './state.ts';
import { blowOf, landsOn, leastHarm } from './strikePump.ts';

/** One blow looked at closely: what it was, against what held and what harms. Forces in N, times in s. */
export interface StrikeLook {
  /** Where hammer or block landed. */
  readonly onto: 'body' | 'plunger';
  readonly peak: number;
  /** Force times time, N.s, and how long it touched. */
  readonly impulse: number;
  readonly duration: number;
  /** What the bond held just before; 0 when nothing did or the plunger was out. */
  readonly hold: number;
  /** The spring's share of the load on the bond at rest, N, towards the cam. */
  readonly spring: number;
  /** Which way such a blow drives the plunger in the body, and the greatest load on the bond that way, N. */
  readonly towards: 'cam' | 'outlet';
  readonly load: number;
  /** Least force that harms something as it was struck, N; 0 for a blow that harms at any force. */
  readonly harms: number;
  readonly trace: readonly { readonly time: number; readonly force: number }[];
}

/** A blow on the loose pump as it was just before; the state is left as it is. Null where the blow meets no body. */
export function lookAtStrike(
  def: SetDefinition,
  state: Readonly<SimState>,
  command: Extract<SimCommand, { do: 'strike' }>,
): StrikeLook | null {
  if (command.target === 'pin') return null;
  const onto = landsOn(def, state, command.target);
  const { peakForce, duration, trace, loadCam, loadOutlet } = blowOf(def, state, command, onto);
  const hasPlunger = state.assembly.parts.plunger === 'fitted';
  const hold = hasPlunger ? staticFriction(def, state) : 0;
  const spring = hasPlunger ? springForce(def, state, state.pump.travel) : 0;
  // a body struck at its cam end leaves the plunger behind towards the cam; the plunger itself goes where it is driven
  const atCamEnd = command.target === 'camEnd' || command.target === 'cup';
  const towards = atCamEnd === (onto === 'body') ? 'cam' : 'outlet';
  let impulse = 0;
  trace.forEach((sample, at) => {
    const before = trace[at - 1];
    if (before !== undefined) impulse += ((sample.force + before.force) / 2) * (sample.time - before.time);
  });
  return {
    onto,
    peak: peakForce,
    impulse,
    duration,
    hold,
    spring,
    towards,
    load: (towards === 'cam' ? -loadCam : loadOutlet) * hold,
    harms: leastHarm(def, state, command, onto),
    trace: trace.map(({ time, force }) => ({ time, force })),
  };
}
