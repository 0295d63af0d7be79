import type { PlaceId } from '../../src/sim/set/commands.ts';
import {
  blow,
  commandAt,
  entry,
  insertAt,
  type Log,
  redone,
  retold,
  striking,
  unfound,
  unheard,
  without,
} from './logs.ts';

const careless = (what: PlaceId) => (log: Log) => without(log, { do: 'setPlace', what });
const atStart = (log: Log, ...added: Parameters<typeof entry>[]) =>
  insertAt(log, 0, ...added.map((one) => entry(...one)));
/** With what one act was and showed put in once more, straight after it. */
const again = (log: Log, part: Parameters<typeof commandAt>[1]) => {
  const at = commandAt(log, part);
  return insertAt(log, at + 1, ...log.slice(at, at + 1));
};
const firstBlow = (log: Log) => commandAt(log, { do: 'strike' });
const tightenedTo = (log: Log, joint: string, torque: number) =>
  retold(log, (event) =>
    event.kind === 'jointTightened' && event.joint === joint ? { ...event, torque } : event,
  );

/** For each rule, the careful worker's log spoilt in the one way that the rule is about. */
export const failures: Record<string, (log: Log) => Log> = {
  // what nothing comes out of is not explained by compression either: then there is nothing left to prove
  'compression-proved': (log) => unfound(log, 'compressionFelt', 'noFuelAtUnion'),
  'spun-with-lever-held': (log) => unfound(log, 'crankSpun', 'noCreak', 'noFuelAtUnion', 'pinStays'),
  'air-looked-at': (log) => unfound(log, 'airClear', 'noFuelAtUnion'),
  'fuel-to-the-pump': (log) => unfound(log, 'hoseFlows', 'pinStays'),
  'fuel-at-the-injector': (log) => unfound(log, 'noFuelAtUnion', 'noCreak'),
  'pin-watched': (log) => unfound(log, 'pinStays'),
  'cause-named': (log) =>
    retold(log, (event) => (event.kind === 'causeNamed' ? { ...event, cause: 'airInLine' } : event)),
  'finding-cited': (log) =>
    retold(log, (event) => (event.kind === 'causeNamed' ? { ...event, because: 'tankHasFuel#1' } : event)),
  'struck-out-by-findings': (log) => insertAt(log, 0, striking('wornPair')),
  'true-cause-kept': (log) => insertAt(log, 0, striking('plungerStuckUp')),
  'read-before-freeing': (log) => unfound(log, 'cupRecessed', 'cupProud'),
  'named-before-freeing': (log) => insertAt(log, 0, blow()),
  'pump-off-for-a-reason': (log) =>
    insertAt(log, 0, entry({ do: 'remove', part: 'pump' }, { kind: 'partRemoved', part: 'pump' })),
  'checked-to-tell': (log) => again(log, { do: 'check', what: 'tank' }),
  'opened-for-a-reason': (log) =>
    atStart(log, [
      { do: 'remove', part: 'shims' },
      { kind: 'partRemoved', part: 'shims' },
    ]),
  'mended-for-a-reason': (log) =>
    atStart(log, [
      { do: 'mend', what: 'exhaust' },
      { kind: 'mended', what: 'exhaust' },
    ]),

  'load-isolated': careless('loadIsolated'),
  'exhaust-led-out': careless('openAir'),
  'lifted-by-two': careless('helperToLift'),
  'no-flame': careless('noFlame'),
  extinguisher: careless('extinguisher'),
  eyes: careless('eyeProtection'),
  hearing: careless('hearingProtection'),
  'cannot-start': (log) => without(log, { do: 'moveStopLever', to: 'stop' }),
  'tray-under': careless('trayUnder'),
  'cup-held': (log) =>
    redone(log, (command) =>
      command.do === 'remove' && command.part === 'retainer' ? { ...command, held: false } : command,
    ),
  'leaks-by-card': (log) =>
    redone(log, (command) =>
      command.do === 'check' && command.what === 'leaks' ? { ...command, with: 'finger' } : command,
    ),
  'runaway-guarded': (log) => unfound(log, 'stopProved'),
  'rags-clear': careless('ragsClear'),
  'spill-wiped': (log) => without(log, { do: 'clean', what: 'spill' }),
  'load-back-in-order': (log) => unfound(log, 'runsWell'),
  'nobody-hurt': (log) => atStart(log, [null, { kind: 'hurt', what: 'kickBack' }]),

  'area-clean-first': (log) => without(log, { do: 'clean', what: 'pumpArea' }),
  'openings-covered': (log) => without(log, { do: 'cover', opening: 'engineHole' }),
  'holder-cracked-well': (log) =>
    insertAt(
      log,
      firstBlow(log),
      entry(
        { do: 'placePump', on: 'viceBody', camUp: false },
        { kind: 'pumpPlaced', on: 'viceBody', camUp: false },
      ),
      entry(
        { do: 'loosen', joint: 'holder', to: 'off', backup: false },
        { kind: 'jointLoosened', joint: 'holder', to: 'off', backup: false },
      ),
    ),
  'cam-low-coming-off': (log) =>
    insertAt(
      log,
      commandAt(log, { do: 'remove', part: 'pump' }),
      entry(null, { kind: 'pumpCocked', force: 300 }),
    ),
  'valve-out-first': (log) => insertAt(log, commandAt(log, { do: 'remove', part: 'valve' }), blow()),
  'wood-between': (log) => insertAt(log, firstBlow(log), blow({ block: 'none' }, 'none')),
  'held-softly': (log) =>
    insertAt(
      log,
      firstBlow(log),
      entry({ do: 'placePump', on: 'anvil', camUp: true }, { kind: 'pumpPlaced', on: 'anvil', camUp: true }),
      blow(),
    ),
  'measured-blows': (log) => insertAt(log, firstBlow(log), blow({ peakForce: 5000 })),
  'end-that-answers': (log) => insertAt(log, firstBlow(log), ...Array.from({ length: 13 }, () => blow())),
  'worked-both-ways': (log) => without(log, { do: 'pushPlunger' }),
  swabbed: (log) =>
    redone(log, (command) =>
      command.do === 'clean' && command.what === 'barrel' ? { ...command, with: 'rag' } : command,
    ),
  'pair-judged': (log) => unheard(log, { kind: 'pairJudged' }),
  'no-dirt-in': (log) => atStart(log, [null, { kind: 'dirtGotIn', where: 'pair', grit: 9 }]),
  'nothing-spoiled': (log) => atStart(log, [null, { kind: 'damaged', part: 'plunger', what: 'footBruised' }]),
  'held-in-order': (log) =>
    atStart(log, [
      { do: 'placePump', on: 'viceBody', camUp: true },
      { kind: 'pumpPlaced', on: 'viceBody', camUp: true },
    ]),

  'new-washer': (log) =>
    redone(log, (command) => (command.do === 'tighten' ? { ...command, newWasher: false } : command)),
  'holder-torque': (log) => tightenedTo(log, 'holder', 70),
  'felt-again': (log) => {
    const holder = commandAt(log, { do: 'tighten', joint: 'holder' });
    return log.filter(
      ({ command }, index) => index < holder || command?.do !== 'check' || command.what !== 'plungerTravel',
    );
  },
  'plunger-right-way': (log) =>
    retold(log, (event) =>
      event.kind === 'partFitted' && event.part === 'plunger' ? { ...event, turned: true } : event,
    ),
  'same-shims': (log) =>
    atStart(log, [
      { do: 'fit', part: 'shims', thickness: 0.001 },
      { kind: 'partFitted', part: 'shims', inSlot: false, turned: false },
    ]),
  'cam-low-going-on': (log) =>
    insertAt(
      log,
      commandAt(log, { do: 'fit', part: 'pump' }),
      entry(null, { kind: 'pumpCocked', force: 300 }),
    ),
  'pin-in-slot': (log) =>
    retold(log, (event) =>
      event.kind === 'partFitted' && event.part === 'pump' ? { ...event, inSlot: false } : event,
    ),
  'nuts-in-turn': (log) => {
    const first = commandAt(log, { do: 'tighten', joint: 'pumpNut1' });
    return log.filter((_, index) => index !== first && index !== first + 1);
  },
  'nut-torque': (log) => tightenedTo(log, 'pumpNut2', 40),
  'pin-follows-again': (log) => unfound(log, 'pinFollows'),
  'stop-proved-again': (log) => unfound(log, 'stopProved'),
  'gravity-first': (log) => unheard(log, { kind: 'bled' }),
  'pipe-bled': (log) => unfound(log, 'fuelAtUnion'),
  'lever-held-bleeding': (log) => without(log, { do: 'holdDecompressor', held: true }),
  'union-torque': (log) => tightenedTo(log, 'pipeAtPump', 45),
  'second-spanner': (log) =>
    redone(log, (command) => (command.do === 'tighten' ? { ...command, backup: false } : command)),
  'leaks-checked': (log) => unfound(log, 'jointsDry'),

  started: (log) => unheard(log, { kind: 'started' }),
  'stops-by-lever': (log) => unheard(log, { kind: 'stopped' }),
  'runs-well': (log) => unfound(log, 'runsWell'),
  'all-together': (log) => without(log, { do: 'fit', part: 'windowCover' }),
  'nothing-broken': (log) => atStart(log, [null, { kind: 'damaged', part: 'hose', what: 'cut' }]),
  'own-pair-kept': (log) => atStart(log, [{ do: 'orderPair' }, { kind: 'pairOrdered' }]),
  'load-back': (log) => unheard(log, { kind: 'placeSet', what: 'loadIsolated', on: false }),
  'card-written': (log) =>
    retold(log, (event) =>
      event.kind === 'cardWritten' ? { ...event, advice: ['freshFuel', 'runDryForStorage'] } : event,
    ),
};
