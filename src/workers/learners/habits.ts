import type { MendId } from '../../sim/set/commands.ts';
import { pumpInside } from '../../sim/set/mend.ts';
import { byFindings, intoThePump, plain } from '../methodical.ts';
import { openCamEnd, openOutlet, pumpOff } from '../stages/deeper.ts';
import { foundNow, freshHands, hoseOff, pipeOff, takeOffPart } from '../stages/hands.ts';
import {
  lookIntoWindow,
  lookRound,
  proveCompression,
  proveFuel,
  proveNozzle,
  proveSupply,
} from '../stages/look.ts';
import { precautions } from '../stages/receive.ts';
import { putTogether } from '../stages/repair.ts';
import { handOver, provesItself } from '../stages/start.ts';
import type { Worker } from '../worker.ts';

/** Makes every check of the book in its order, whatever has been found by then; the pump only where they lead to it. */
export const byTheBook: Worker = byFindings('textbook', function* (hands, mended) {
  yield* lookRound(hands);
  yield* proveCompression(hands);
  yield* proveFuel(hands);
  yield* proveSupply(hands);
  yield* lookIntoWindow(hands);
  if (foundNow(hands, 'fuelAtUnion')) yield* proveNozzle(hands);
  if (plain(hands).some((cause) => !mended.has(cause))) return;
  if (foundNow(hands, 'sprayNone')) yield* openOutlet(hands);
  else if (foundNow(hands, 'pinHeld', 'noFuelAtUnion', 'sprayFine')) yield* intoThePump(hands);
});

/** Takes the whole fuel side apart before anything else, and then looks at what lies there. */
export const openEverything: Worker = byFindings('open everything', function* (hands) {
  yield* takeOffPart(hands, 'airCover');
  yield* pumpOff(hands);
  yield* openOutlet(hands);
  yield* openCamEnd(hands);
  yield { do: 'check', what: 'airElement' };
  yield { do: 'check', what: 'linkage' };
  yield { do: 'check', what: 'hoseLook' };
  yield { do: 'check', what: 'hoseFlow' };
  yield { do: 'check', what: 'bowl' };
  yield { do: 'check', what: 'plungerFace' };
  yield { do: 'check', what: 'shimCount' };
  yield { do: 'check', what: 'camLift' };
  yield { do: 'check', what: 'exhaust' };
  yield { do: 'check', what: 'blowBy' };
  yield { do: 'check', what: 'decompressorPlay' };
});

/** What can be changed for new or set afresh, cheapest first. */
const spares: readonly MendId[] = [
  'airElement',
  'filter',
  'hose',
  'freshFuel',
  'exhaust',
  'decompressor',
  'injector',
  'pipe',
  'governorLinkage',
  'warmUp',
  'valves',
  'pumpOverhaul',
  'engineOverhaul',
];

/** Checks nothing: changes whatever can be changed, puts it together, and names what the card lists first. */
export const replaceEverything: Worker = {
  name: 'replace everything',
  *work(view) {
    const hands = freshHands(view);
    for (const what of precautions) yield { do: 'setPlace', what, on: true };
    yield { do: 'moveStopLever', to: 'stop' };
    yield* takeOffPart(hands, 'airCover');
    yield* takeOffPart(hands, 'windowCover');
    yield* hoseOff(hands);
    yield* pipeOff(hands);
    yield* pumpOff(hands);
    for (const what of spares) yield { do: 'mend', what };
    for (const part of pumpInside) hands.off.delete(part);
    hands.slack.delete('holder');
    yield { do: 'fillTank' };
    yield { do: 'setCap', vented: true };
    yield { do: 'fit', part: 'airCover' };
    hands.off.delete('airCover');
    yield* putTogether(hands);
    yield* provesItself(view);
    const [cause] = view.scenario.causes;
    const because = view.card.findings[0];
    if (cause !== undefined && because !== undefined) yield { do: 'nameCause', cause, because: because.id };
    yield* handOver(view);
  },
};

/** Asks for help before every act, all three levels of it and on everything; then does as whoever knows the trade. */
export const milking = (worker: Worker): Worker => ({
  name: 'hint milker',
  *work(view) {
    const script = worker.work(view);
    let next = script.next();
    while (!next.done) {
      for (const about of ['nextCheck', 'nextStep'] as const)
        for (const level of [1, 2, 3] as const) yield { do: 'askHint', level, about };
      next = script.next(yield next.value);
    }
  },
});
