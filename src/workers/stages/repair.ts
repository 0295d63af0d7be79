import type { CauseId } from '../../jobs/causes.ts';
import type { MendId } from '../../sim/set/commands.ts';
import { pumpInside } from '../../sim/set/mend.ts';
import { saw } from '../worker.ts';
import { closeCamEnd, closeHolder, crackHolder, openCamEnd, openOutlet, pumpOff, pumpOn } from './deeper.ts';
import { freePlunger } from './free.ts';
import {
  foundNow,
  type Hands,
  hoseOff,
  hoseOn,
  type Part,
  pipeOff,
  pipeOn,
  putBack,
  setTap,
  takeOffPart,
  tightenUp,
  unionTight,
} from './hands.ts';

function* mend(what: MendId): Part<void> {
  yield { do: 'mend', what };
}

/** Pump off, pair cleaned, looked at and felt; a pair that is spoiled, or asked for, is replaced as a pair. */
function* dressPair(hands: Hands, replace: boolean, between: MendId | null = null): Part<void> {
  yield* pumpOff(hands);
  if (!hands.off.has('valve')) yield* openOutlet(hands);
  if (foundNow(hands, 'plungerStuck') && !foundNow(hands, 'dragsUnderPush')) yield* freePlunger(hands.view);
  if (!(yield* openCamEnd(hands))) {
    yield* sendOut(hands);
    return;
  }
  if (between !== null) yield* mend(between);
  const since = hands.view.card.findings.length;
  yield* swabPair();
  yield { do: 'check', what: 'plungerFace' };
  yield* putPlungerIn(hands);
  const codes = hands.view.card.findings.slice(since).map(({ code }) => code);
  const sound = codes.includes('faceBright') && codes.includes('slidesFreely') && !replace;
  yield { do: 'judgePair', verdict: sound ? 'fitForUse' : 'replace' };
  if (!sound) {
    yield { do: 'orderPair' };
    yield* takeOffPart(hands, 'plunger');
    yield* swabPair();
    yield* putPlungerIn(hands);
  }
}

/** What does not come free by fair means is sent to those who have the bench for it. */
function* sendOut(hands: Hands): Part<void> {
  yield { do: 'judgePair', verdict: 'replace' };
  yield* mend('pumpOverhaul');
  for (const part of pumpInside) hands.off.delete(part);
  hands.slack.delete('holder');
}

function* swabPair(): Part<void> {
  yield { do: 'clean', what: 'barrel', with: 'swab' };
  yield { do: 'clean', what: 'plunger', with: 'swab' };
}

function* putPlungerIn(hands: Hands): Part<void> {
  yield { do: 'fit', part: 'plunger', turned: false, wet: true };
  hands.off.delete('plunger');
  yield { do: 'check', what: 'freeSlide' };
}

function* freshShims(hands: Hands): Part<void> {
  yield* pumpOff(hands);
  yield* takeOffPart(hands, 'shims');
  yield { do: 'fit', part: 'shims', thickness: hands.view.def.pump.nominalShim };
  hands.off.delete('shims');
}

function* newValve(hands: Hands): Part<void> {
  if (!hands.off.has('valve')) yield* openOutlet(hands);
  // a seat that still leaks once it is clean is cut
  const looks = hands.view.card.findings.slice(hands.since).filter(({ check }) => check === 'valveSeat');
  if (looks[looks.length - 1]?.code === 'seatLeaks') yield* mend('deliveryValve');
}

const outside: Partial<Record<CauseId, MendId>> = {
  exhaustBlocked: 'exhaust',
  decompressorNotClosing: 'decompressor',
  inletValveLeaking: 'valves',
  exhaustValveLeaking: 'valves',
  ringsWorn: 'engineOverhaul',
  tooColdForThePull: 'warmUp',
  fuelWaxed: 'freshFuel',
  fuelContaminated: 'freshFuel',
  waterInFuel: 'freshFuel',
};

/** Mends one cause as it is mended in the trade; what was opened for it stays open. */
export function* mendCause(hands: Hands, cause: CauseId): Part<void> {
  const simple = outside[cause];
  if (simple !== undefined) {
    yield* mend(simple);
    return;
  }
  switch (cause) {
    case 'airInletBlocked':
      yield* takeOffPart(hands, 'airCover');
      yield* mend('airElement');
      yield* putBack(hands, 'airCover');
      return;
    case 'tankEmpty':
      yield { do: 'fillTank' };
      return;
    case 'tapShut':
      hands.tapOpen = false;
      yield* setTap(hands, true);
      return;
    case 'ventBlocked':
      yield { do: 'setCap', vented: true };
      return;
    case 'filterBlocked':
      yield* setTap(hands, false);
      yield* mend('filter');
      return;
    case 'airDrawnIn':
      yield* hoseOff(hands);
      yield* mend('hose');
      return;
    default:
      yield* mendPump(hands, cause);
  }
}

function* mendPump(hands: Hands, cause: CauseId): Part<void> {
  switch (cause) {
    case 'stopLeverAtStop':
    case 'airInLine':
      // the lever goes to run, and the line is bled, on the way to the start
      return;
    case 'governorSeized':
      yield* takeOffPart(hands, 'windowCover');
      yield* mend('governorLinkage');
      return;
    case 'jointLeaking':
      if (
        hands.view.card.findings.some(({ code, values }) => code === 'jointWeeps' && values.where === 'pipe')
      ) {
        yield* pipeOff(hands);
        yield* mend('pipe');
      } else if (!hands.off.has('pipe')) yield* tightenUp(hands, 'pipeAtInjector');
      return;
    case 'injectorNotOpening':
    case 'injectorNotClosing':
    case 'injectorSpringWeak':
    case 'nozzleCoked':
      yield* pipeOff(hands);
      yield* mend('injector');
      return;
    case 'deliveryValveLeaking':
      yield* newValve(hands);
      return;
    case 'pairBinding':
      yield* pipeOff(hands);
      if (!hands.slack.has('holder')) yield* crackHolder(hands);
      return;
    case 'wrongShims':
      yield* freshShims(hands);
      return;
    case 'camOrCupWorn':
      yield* pumpOff(hands);
      yield* takeOffPart(hands, 'retainer');
      yield* takeOffPart(hands, 'cup');
      yield* mend('camAndCup');
      return;
    case 'pinOutOfFork':
      yield* pumpOff(hands);
      return;
    default:
      yield* dressPair(
        hands,
        cause === 'pinBent' || cause === 'wornPair',
        cause === 'returnSpringBroken' ? 'returnSpring' : null,
      );
  }
}

/** Puts everything back that is off, and bleeds what was opened or run dry. */
export function* putTogether(hands: Hands): Part<void> {
  const hadPumpOff = hands.off.has('pump');
  if (hadPumpOff) {
    yield* closeCamEnd(hands);
    yield* closeHolder(hands);
    yield { do: 'placePump', on: 'hand', camUp: true };
    yield { do: 'check', what: 'plungerTravel' };
    yield* pumpOn(hands);
  } else yield* closeHolder(hands);
  yield* hoseOn(hands);
  yield* setTap(hands, true);
  yield* pipeOn(hands);
  yield* bleed(hands);
  if (hands.off.has('windowCover')) {
    if (!hadPumpOff) yield { do: 'check', what: 'stopLeverProof' };
    yield* putBack(hands, 'windowCover');
  }
}

/** Lets fuel well up through the ports to the slack holder, the cam on its low side. */
function* bleedOutlet(hands: Hands): Part<void> {
  yield* pipeOff(hands);
  yield { do: 'loosen', joint: 'holder', to: 'slack', backup: false };
  yield { do: 'turnFlywheel', to: 'lowSide' };
  yield { do: 'wait', seconds: 30 };
  yield* tightenUp(hands, 'holder');
  yield* pipeOn(hands);
}

/** By gravity to the pump, then through the pipe with the lever held until solid fuel comes. */
export function* bleed(hands: Hands): Part<void> {
  yield { do: 'loosen', joint: 'bleedScrew', to: 'slack', backup: false };
  yield { do: 'wait', seconds: 15 };
  yield* tightenUp(hands, 'bleedScrew');
  if (!hands.slack.has('pipeAtInjector')) {
    yield { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true };
    hands.slack.add('pipeAtInjector');
  }
  yield { do: 'moveThrottle', to: 1 };
  yield { do: 'moveStopLever', to: 'run' };
  yield { do: 'holdDecompressor', held: true };
  for (let pull = 0; pull < 25; pull += 1) {
    const events = yield { do: 'pullCord', effort: 'firm', letGoAt: null };
    const codes = events.flatMap((event) => (event.kind === 'found' ? [event.finding.code] : []));
    if (codes.includes('fuelAtUnion') || saw(events, 'refused')) break;
    // air shut in above the plunger is only squeezed to and fro
    if (codes.includes('noFuelAtUnion') && pull === 2) yield* bleedOutlet(hands);
    if (codes.includes('noFuelAtUnion') && pull === 6) break;
  }
  yield* unionTight(hands);
  yield { do: 'holdDecompressor', held: false };
  yield { do: 'clean', what: 'spill', with: 'rag' };
  yield { do: 'check', what: 'leaks', with: 'card' };
}
