import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import { engineVoices } from './engineVoices.ts';
import { handVoices } from './handVoices.ts';
import { type Heard, heard } from './heard.ts';
import { lineVoices } from './lineVoices.ts';
import type { Bed, Shot } from './voice.ts';

/** What is heard at one look. */
export type Hearing = { readonly shots: readonly Shot[]; readonly beds: readonly Bed[]; readonly now: Heard };

/** Speed of the cord above which it is heard, m/s. */
const CORD_HEARD = 0.05;

function cordBeds(before: Heard, sim: Readonly<SimState>, seconds: number): Bed[] {
  const speed = seconds > 0 ? (sim.hand.rope - before.rope) / seconds : 0;
  if (Math.abs(speed) < CORD_HEARD) return [];
  const level = Math.min(0.16, 0.03 * Math.sqrt(Math.abs(speed)) + 0.02 * Math.abs(speed));
  return [{ sound: speed > 0 ? 'cord' : 'cordBack', frequency: 900 + 240 * Math.abs(speed), q: 1.4, level }];
}

/**
 * Listens to the set: what has changed since `before` as short sounds, what goes on as lasting ones.
 *
 * Pure. seconds: time on the set's clock between the two looks.
 */
export function hear(def: SetDefinition, before: Heard, sim: Readonly<SimState>, seconds: number): Hearing {
  const engine = engineVoices(def, before, sim);
  const line = lineVoices(def, before, sim);
  const hand = handVoices(def, before, sim, seconds);
  return {
    shots: [...engine.shots, ...line.shots, ...hand.shots],
    beds: [...engine.beds, ...cordBeds(before, sim, seconds), ...hand.beds].filter(
      ({ level }) => level > 0.004,
    ),
    now: heard(sim),
  };
}
