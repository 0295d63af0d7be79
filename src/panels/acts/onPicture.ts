/**
 * One way in which an act is done on the picture itself, by pointer or touch:
 * a click or a drag on a piece with a tool in the hand, or a press in the strip that lists what can be done to the
 * piece that is selected.
 */
export type PictureWay =
  | { readonly by: 'click' | 'drag'; readonly tool: string; readonly piece: string }
  | {
      readonly by: 'strip';
      readonly at: readonly string[];
      /** Listed only while the pump is off the engine, or on it. */
      readonly pump?: 'loose' | 'fitted';
    };

const drag = (piece: string, tool = 'hand'): PictureWay => ({ by: 'drag', tool, piece });
const click = (piece: string, tool = 'hand'): PictureWay => ({ by: 'click', tool, piece });
const strip = (...at: string[]): PictureWay => ({ by: 'strip', at });
const loose = (...at: string[]): PictureWay => ({ by: 'strip', at, pump: 'loose' });
const fitted = (...at: string[]): PictureWay => ({ by: 'strip', at, pump: 'fitted' });

/** How each act of the catalogue is done on the picture. */
export const onPicture: Readonly<Record<string, readonly PictureWay[]>> = {
  'place-loadIsolated': [click('plug'), strip('load')],
  'place-openAir': [strip('frame', 'exhaust')],
  'place-noFlame': [strip('tank', 'exhaust')],
  'place-extinguisher': [strip('extinguisher', 'frame')],
  'place-helperToLift': [strip('frame')],
  'place-eyeProtection': [click('glasses'), strip('glasses', 'frame')],
  'place-hearingProtection': [click('defenders'), strip('defenders', 'frame')],
  'place-trayUnder': [strip('frame', 'dripTray')],
  'place-boardToHand': [strip('airBox', 'airCover', 'airElement', 'board')],
  'place-ragsClear': [strip('rag', 'swab', 'releasingSolvent', 'diesel', 'acetone')],
  'clean-spill': [click('benchTop', 'rag'), strip('dripTray')],
  wait: [strip('frame'), loose('pumpBody', 'barrel')],

  throttle: [drag('throttle')],
  stopLever: [click('stopLever')],
  decompressor: [click('decompressor')],
  'check-decompressorPlay': [strip('decompressor')],
  'mend-decompressor': [strip('decompressor')],
  'check-linkage': [strip('throttle', 'governorArm')],
  'mend-governorLinkage': [strip('throttle', 'governorArm')],
  'check-stopLeverProof': [fitted('stopLever')],
  pull: [drag('cordHandle'), strip('cord')],
  turn: [click('flywheel'), strip('flywheel', 'recoil', 'camshaft')],
  'check-running': [strip('engine', 'exhaust')],
  'check-blowBy': [strip('flywheel', 'engine')],
  'check-oil': [strip('engine')],
  'mend-warmUp': [strip('engine')],
  'mend-valves': [strip('engine')],
  'mend-engineOverhaul': [strip('engine')],
  'remove-airCover': [drag('airCover')],
  'fit-airCover': [drag('airCover')],
  'check-airElement': [strip('airElement', 'airBox')],
  'mend-airElement': [strip('airElement', 'airBox')],
  blockInlet: [click('airBox', 'board')],
  'check-exhaust': [strip('exhaust')],
  'mend-exhaust': [strip('exhaust')],

  'check-tank': [strip('tank', 'cap')],
  'check-capVent': [strip('cap')],
  cap: [click('cap')],
  fill: [click('tank', 'fuelCan')],
  'mend-freshFuel': [strip('tank')],
  'check-tapStands': [strip('tap')],
  tap: [click('tap')],
  'check-bowl': [strip('bowl')],
  drain: [strip('bowl')],
  'check-fuelSample': [strip('bowl')],
  'mend-filter': [strip('bowl')],
  'loosen-hoseClip': [drag('hose', 'screwdriver')],
  'tighten-hoseClip': [drag('hose', 'screwdriver')],
  'remove-hose': [drag('hose')],
  'fit-hose': [drag('hose')],
  'check-hoseFlow': [strip('hose')],
  'cover-hoseEnd': [click('hose', 'caps')],
  'check-hoseLook': [strip('hose')],
  'mend-hose': [strip('hose')],
  'loosen-bleedScrew': [drag('bleedScrew', 'screwdriver')],
  'tighten-bleedScrew': [drag('bleedScrew', 'screwdriver')],

  'clean-pumpArea': [click('pumpBody', 'brush')],
  'remove-pump': [drag('pumpBody')],
  'fit-pump': [drag('pumpBody')],
  'cover-engineHole': [click('camBox', 'caps')],
  'check-camLift': [loose('pump', 'camshaft')],
  'mend-pumpOverhaul': [loose('pumpBody')],
  'cover-holderEnd': [click('holder', 'caps')],
  'remove-windowCover': [drag('windowCover')],
  'fit-windowCover': [drag('windowCover')],
  'check-pinFollows': [fitted('pin', 'fork', 'throttle', 'windowCover')],
  pushPin: [drag('pin')],
  'loosen-pumpNut1': [drag('pumpNut1', 'spanner')],
  'tighten-pumpNut1': [drag('pumpNut1', 'torqueWrench')],
  'loosen-pumpNut2': [drag('pumpNut2', 'spanner')],
  'tighten-pumpNut2': [drag('pumpNut2', 'torqueWrench')],
  'check-shimCount': [loose('shims')],
  'remove-shims': [drag('shim0')],
  'fit-shims': [drag('shim0'), strip('shims')],
  'clean-shimFace': [click('shim0', 'rag')],

  placePump: [drag('pumpBody'), loose('pumpBody')],
  'check-cupEnd': [loose('cup', 'retainer', 'pumpBody')],
  strike: [drag('pumpBody', 'mediumHammer')],
  soak: [click('barrel', 'releasingSolvent')],
  'check-plungerTravel': [loose('plunger', 'cup', 'barrel')],
  'check-pinTurn': [strip('pin')],
  grasp: [drag('plunger')],
  pushPlunger: [drag('plunger'), loose('plunger')],
  'check-freeSlide': [loose('plunger', 'barrel')],
  'check-plungerFace': [loose('plunger', 'barrel')],
  'remove-plunger': [drag('plunger')],
  'fit-plunger': [drag('plunger'), loose('plunger')],
  'clean-barrel': [click('barrel', 'swab')],
  'clean-plunger': [click('plunger', 'swab')],
  orderPair: [strip('plunger', 'barrel')],
  'remove-retainer': [drag('retainer'), loose('retainer')],
  'remove-cup': [drag('cup')],
  'remove-returnSpring': [drag('returnSpring')],
  'mend-returnSpring': [strip('returnSpring')],
  'mend-camAndCup': [strip('cup', 'camshaft')],
  'fit-returnSpring': [drag('returnSpring')],
  'fit-cup': [drag('cup')],
  'fit-retainer': [drag('retainer'), loose('retainer')],
  'loosen-holder': [drag('holder', 'spanner')],
  'tighten-holder': [drag('holder', 'torqueWrench')],
  'remove-holder': [drag('holder')],
  'remove-valveSpring': [drag('valveSpring')],
  'remove-valve': [drag('valve')],
  'check-valveSeat': [strip('valve')],
  'clean-valve': [click('valve', 'swab')],
  'mend-deliveryValve': [strip('valve')],
  'fit-valve': [drag('valve'), strip('valve')],
  'fit-valveSpring': [drag('valveSpring')],
  'fit-holder': [drag('holder')],

  'loosen-pipeAtPump': [drag('pipeAtPump', 'spanner')],
  'tighten-pipeAtPump': [drag('pipeAtPump', 'torqueWrench')],
  'loosen-pipeAtInjector': [drag('pipeAtInjector', 'spanner')],
  'tighten-pipeAtInjector': [drag('pipeAtInjector', 'torqueWrench')],
  'check-unionFuel': [fitted('pipeAtInjector', 'injector')],
  'remove-pipe': [drag('pipe')],
  'fit-pipe': [drag('pipe')],
  'cover-pipeEnds': [click('pipe', 'caps')],
  'mend-pipe': [strip('pipe')],
  'check-nozzleSpray': [fitted('injector')],
  'mend-injector': [strip('injector')],
  'leaks-card': [click('pipeAtPump', 'card')],
  'leaks-finger': [strip('pipeAtPump')],
};

/** Whether an act is listed in the strip for a thing that is picked in the picture, or a tool in the hand. */
export const isInStrip = (act: string, picked: string, isLoose: boolean): boolean =>
  (onPicture[act] ?? []).some(
    (way) =>
      way.by === 'strip' &&
      way.at.includes(picked) &&
      (way.pump === undefined || (way.pump === 'loose') === isLoose),
  );
