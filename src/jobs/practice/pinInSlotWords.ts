import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimState } from '../../sim/set/state.ts';
import type { Job } from '../job.ts';
import { degrees, millimetres, newtons } from '../quantity.ts';
import { damageText } from './harmWords.ts';
import type { Given, Judgement } from './piece.ts';

/** Friction in the pair from which dirt was plainly left in it, N. */
const GRITTY = 12;

/** Where in the log the pump was last fitted, and whether the pin was seen to follow after that; -1 for never. */
function provedAfter(job: Readonly<Job>): { fitted: number; seen: number; follows: boolean } {
  let [fitted, seen, follows] = [-1, -1, false];
  job.log.forEach(({ events }, index) => {
    for (const event of events) {
      if (event.kind === 'partFitted' && event.part === 'pump') [fitted, seen, follows] = [index, -1, false];
      if (event.kind === 'observed' && event.check === 'pinFollows')
        [seen, follows] = [index, event.values.follows === true];
    }
  });
  return { fitted, seen, follows };
}

/** How far pin and slot stand apart at the fork, as the model has them. */
function apart(def: SetDefinition, sim: Readonly<SimState>): string {
  const gap = Math.abs(sim.pump.turn + sim.condition.pinBend - sim.control.fork);
  return `fork at ${degrees(sim.control.fork)}, pin at ${degrees(sim.pump.turn)}: ${millimetres(gap * def.pump.pinArm)} apart`;
}

interface Fault {
  readonly says: string;
  readonly advice: string;
}

function faultsOf(def: SetDefinition, { before, job }: Given): Fault[] {
  const { sim } = job;
  const proof = provedAfter(job);
  const faults: Fault[] = [];
  const add = (says: string, advice: string) => faults.push({ says, advice });
  if (sim.pump.rest !== null) add('The pump is not on the engine.', 'Fit it, then prove it.');
  else if (!sim.pump.pinInSlot)
    add(
      `The pin stands outside the slot: ${apart(def, sim)}. The throttle moves the fork and the fork moves nothing.`,
      'Take the cover off the window and lead the pin in as the pump goes down.',
    );
  if (sim.pump.turnedHalf)
    add(
      'The plunger is half a turn out: no helix stands at the port, and nothing governs it.',
      'Look at the cup end before fitting: the mark on the foot belongs opposite the pin’s side, not across from it.',
    );
  if (sim.assembly.parts.plunger !== 'fitted' || sim.assembly.parts.retainer !== 'fitted')
    add('The pump is not whole.', 'Spring, cup and retainer go back after the plunger.');
  const made = sim.damage.slice(before.damage.length);
  if (made.length > 0)
    add(
      `It cost something: ${made.map(damageText).join(' and ')}.`,
      made.some(({ what }) => what === 'cockedOnStuds')
        ? 'Turn the cam’s low side to the pump first, so that no spring pushes it askew.'
        : 'Ease the pin out through the window whenever the pump comes off.',
    );
  if (sim.hurt.length > before.hurt.length)
    add(
      'The spring threw the cup at you.',
      'Keep the cup held against its spring while the retainer goes in or out.',
    );
  if (sim.condition.grit > before.condition.grit + GRITTY)
    add(
      `Dirt went into the pair: it drags with ${newtons(sim.condition.grit)}.`,
      'A plunger that was out goes back clean and wet, its barrel swabbed.',
    );
  if (faults.length === 0 && proof.seen < 0)
    add(
      'Nobody has seen the pin follow since the pump went on.',
      'Move the throttle and watch the pin in the window.',
    );
  return faults;
}

/** Judges a refit by how the model's pin, slot and plunger stand, and by whether it was proved. */
export function judgePinInSlot(def: SetDefinition, given: Given): Judgement {
  const faults = faultsOf(def, given);
  const { sim } = given.job;
  if (faults.length === 0)
    return {
      right: true,
      says: [
        `Right. The pin is in the slot and follows: ${apart(def, sim)}.`,
        ...(given.before.pump.turnedHalf ? ['You found the plunger half a turn out and put it right.'] : []),
      ],
    };
  return {
    right: false,
    says: ['Not so.', ...faults.map(({ says }) => says), ...faults.slice(0, 1).map(({ advice }) => advice)],
  };
}
