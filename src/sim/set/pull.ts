import { PI } from '../laws/maths.ts';
import type { Effort } from './commands.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import type { SimState } from './state.ts';

/** Starts a pull of the cord; the decompressor is let go by itself at a share of the rope where one is given. */
export function beginPull(def: SetDefinition, state: SimState, effort: Effort, letGoAt: number | null): void {
  const { hand, engine, control, line } = state;
  hand.rope = 0;
  hand.returning = false;
  hand.pull = { strength: def.starter.effortForce[effort], force: 0, letGoAt, elapsed: 0, blocked: 0 };
  hand.tally = {
    effort,
    restAngle: engine.theta,
    held: control.decompressorHeld,
    peakForce: 0,
    peakSpeed: 0,
    work: 0,
    turned: 0,
    topsPassed: 0,
    strokes: 0,
    creaks: line.openings,
    injected: line.injectedTotal,
    fired: false,
    fuelAtSlack: 0,
    airAtSlack: 0,
  };
}

/** Tells a pull once the cord is back and the crank rests, or the engine runs by itself. */
export function tellPull(_def: SetDefinition, state: SimState, events: SimEvent[]): void {
  const { hand, engine, line } = state;
  const { tally } = hand;
  if (tally === null || hand.pull || hand.returning) return;
  if (engine.omega !== 0 && !engine.running) return;
  const seen = line.seenFuel + line.seenAir;
  events.push({
    kind: 'pullEnded',
    effort: tally.effort,
    restAngle: tally.restAngle,
    peakForce: tally.peakForce,
    peakSpeed: tally.peakSpeed,
    work: tally.work,
    turns: tally.turned / (2 * PI),
    passedTdc: tally.topsPassed > 0,
    stoppedAt: engine.omega === 0 ? engine.theta : null,
    strokes: tally.strokes,
    creaks: line.openings - tally.creaks,
    injected: line.injectedTotal - tally.injected,
    fired: tally.fired,
    held: tally.held,
    fuelAtSlack: tally.fuelAtSlack,
    airAtSlack: tally.airAtSlack,
    lastAirShare: seen > 0 ? line.seenAir / seen : 0,
  });
  hand.tally = null;
}
