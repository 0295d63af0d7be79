import { pinSet } from '../laws/pinBending.ts';
import type { SimCommand } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { beginGrasp, endGrasp } from './grasp.ts';
import { damage, hurt } from './harm.ts';
import { machineOf } from './machine.ts';
import { pinPush, twistHold, workPair } from './pair.ts';
import type { SimState } from './state.ts';
import { strikePump } from './strikePump.ts';

type HandCommand = Extract<
  SimCommand,
  { do: 'strike' | 'pushPin' | 'pushPlunger' | 'grasp' | 'handTo' | 'letGo' | 'soak' | 'wait' }
>;

/** Angle through which a lever follows a pin that folds, as travel at the tip, m. Assumed, no source. */
const FOLLOW = 0.004;

/** What hands and hand tools do to the loose pump and to the pin. */
export function applyHand(
  def: SetDefinition,
  state: SimState,
  command: HandCommand,
  events: SimEvent[],
): void {
  const { pump, hand } = state;
  switch (command.do) {
    case 'strike':
      strikePump(def, state, command, events);
      return;
    case 'pushPin':
      pushPin(def, state, command, events);
      return;
    case 'pushPlunger':
      beginGrasp(
        def,
        state,
        command.twist,
        command.towards === 'outlet' ? command.force : -command.force,
        command.seconds,
      );
      return;
    case 'grasp':
      beginGrasp(def, state, 0, 0, null);
      return;
    case 'handTo':
      if (!hand.grasp) return;
      hand.grasp.travel = command.travel;
      hand.grasp.twist = Math.max(-def.hand.fingerTwist, Math.min(def.hand.fingerTwist, command.twist));
      return;
    case 'letGo':
      endGrasp(def, state, events);
      return;
    case 'soak':
      pump.solvent = command.with;
      pump.wet = true;
      if (command.with === 'acetone' && !state.place.noFlame) hurt(state, 'fire', events);
      if (command.with !== 'diesel' && !state.place.openAir) hurt(state, 'fumes', events);
      events.push({ kind: 'soaked', with: command.with });
      return;
    case 'wait':
      events.push({ kind: 'waited', seconds: command.seconds });
  }
}

/** A push on the control pin: it turns the plunger if the bond lets go, else it may bend. */
function pushPin(
  def: SetDefinition,
  state: SimState,
  command: Extract<HandCommand, { do: 'pushPin' }>,
  events: SimEvent[],
): void {
  const { pump, condition } = state;
  const { pinArm, pinDiameter, pinYield } = def.pump;
  const force = Math.max(0, Math.min(command.force, pinPush(def, command.with)));
  const need = twistHold(def, state) / pinArm;
  const pin = { diameter: pinDiameter, arm: pinArm, yieldStress: pinYield, modulus: def.blow.steelModulus };
  // the pin feels what the bond holds back, never more than the push
  const felt = Math.min(force, need);
  const bent = pinSet(pin, felt, FOLLOW);
  let turned = 0;
  if (force > need && !(bent > 0.15)) {
    const goal = command.towards === 'stop' ? 0 : machineOf(def).startTurn;
    turned = goal - pump.turn;
    pump.turn = goal;
    workPair(def, state, Math.abs(turned) * (def.pump.plungerDiameter / 2));
  }
  if (bent > 0.002) {
    condition.pinBend += bent;
    damage(state, 'pin', bent > 0.1 ? 'bent' : 'slightSet', events);
  }
  events.push({ kind: 'pinPushed', with: command.with, force: felt, turned, bent });
}
