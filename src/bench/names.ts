/** What each thing in the scene is called, and the name by which the rest of the program knows it. */
type Known = { readonly name: string; readonly as: string };

const known: Readonly<Record<string, Known>> = {
  pumpBody: { name: 'Injection pump', as: 'pumpBody' },
  windowCover: { name: 'Window cover', as: 'windowCover' },
  barrel: { name: 'Barrel', as: 'barrel' },
  plunger: { name: 'Plunger', as: 'plunger' },
  pin: { name: 'Control pin', as: 'pin' },
  fork: { name: 'Governor fork', as: 'fork' },
  cup: { name: 'Cup', as: 'cup' },
  retainer: { name: 'Retaining ring', as: 'retainer' },
  springPlate: { name: 'Spring plate', as: 'returnSpring' },
  returnSpring: { name: 'Return spring', as: 'returnSpring' },
  valveSeat: { name: 'Delivery-valve seat', as: 'valve' },
  valve: { name: 'Delivery valve', as: 'valve' },
  valveSpring: { name: 'Valve spring', as: 'valveSpring' },
  holder: { name: 'Delivery-valve holder', as: 'holder' },
  bleedScrew: { name: 'Bleed screw', as: 'bleedScrew' },
  shim0: { name: 'Shims', as: 'shims' },
  shim1: { name: 'Shims', as: 'shims' },
  pumpNut1: { name: 'Pump nut', as: 'pumpNut1' },
  pumpNut2: { name: 'Pump nut', as: 'pumpNut2' },
  pipeAtPump: { name: 'Union nut at the pump', as: 'pipeAtPump' },
  pipeAtInjector: { name: 'Union nut at the injector', as: 'pipeAtInjector' },
  pipe: { name: 'Injector pipe', as: 'pipe' },
  hose: { name: 'Fuel hose', as: 'hose' },
  hoseClip: { name: 'Hose clip', as: 'hoseClip' },
  injector: { name: 'Injector', as: 'injector' },
  studs: { name: 'Studs', as: 'pumpNut1' },
  camBox: { name: 'Cam chamber', as: 'pump' },
  camshaft: { name: 'Camshaft', as: 'camshaft' },
  engine: { name: 'Engine', as: 'engine' },
  frame: { name: 'Base frame', as: 'frame' },
  generator: { name: 'Generator end', as: 'generator' },
  starter: { name: 'Recoil starter', as: 'recoil' },
  guide: { name: 'Recoil starter', as: 'recoil' },
  cordHandle: { name: 'Starting cord', as: 'cord' },
  cord: { name: 'Starting cord', as: 'cord' },
  flywheel: { name: 'Flywheel', as: 'flywheel' },
  exhaust: { name: 'Silencer', as: 'exhaust' },
  quadrant: { name: 'Throttle', as: 'throttle' },
  throttle: { name: 'Throttle', as: 'throttle' },
  stopPlate: { name: 'Stop lever', as: 'stopLever' },
  stopLever: { name: 'Stop lever', as: 'stopLever' },
  governorArm: { name: 'Governor arm', as: 'governorArm' },
  speedSpring: { name: 'Governor spring', as: 'governorArm' },
  stopLink: { name: 'Stop link', as: 'stopLever' },
  decompressor: { name: 'Decompressor', as: 'decompressor' },
  airBox: { name: 'Air box', as: 'airBox' },
  airElement: { name: 'Air element', as: 'airElement' },
  airCover: { name: 'Air box cover', as: 'airCover' },
  tank: { name: 'Fuel tank', as: 'tank' },
  cap: { name: 'Filler cap', as: 'cap' },
  sight: { name: 'Sight tube', as: 'tank' },
  level: { name: 'Sight tube', as: 'tank' },
  tapBody: { name: 'Fuel tap', as: 'tap' },
  tap: { name: 'Fuel tap', as: 'tap' },
  filterHead: { name: 'Filter bowl', as: 'bowl' },
  bowl: { name: 'Filter bowl', as: 'bowl' },
  plug: { name: 'Load cable', as: 'load' },
  extinguisher: { name: 'Extinguisher', as: 'extinguisher' },
  dripTray: { name: 'Drip tray', as: 'dripTray' },
  glasses: { name: 'Safety glasses', as: 'glasses' },
  defenders: { name: 'Ear defenders', as: 'defenders' },
  cloth: { name: 'Folded cloth', as: 'cloth' },
  tray: { name: 'Clean tray', as: 'tray' },
  anvil: { name: 'Anvil', as: 'anvil' },
  vice: { name: 'Vice, soft jaws', as: 'vice' },
  viceSlide: { name: 'Vice, soft jaws', as: 'vice' },
  tommyBar: { name: 'Vice, soft jaws', as: 'vice' },
  spanner: { name: 'Spanner', as: 'spanner' },
  secondSpanner: { name: 'Second spanner', as: 'secondSpanner' },
  torqueWrench: { name: 'Torque wrench', as: 'torqueWrench' },
  screwdriver: { name: 'Screwdriver', as: 'screwdriver' },
  lightHammer: { name: 'Light hammer', as: 'lightHammer' },
  mediumHammer: { name: 'Bench hammer', as: 'mediumHammer' },
  heavyHammer: { name: 'Heavy hammer', as: 'heavyHammer' },
  sledge: { name: 'Club hammer', as: 'sledge' },
  woodBlock: { name: 'Beech block', as: 'woodBlock' },
  caps: { name: 'Caps and plugs', as: 'caps' },
  brush: { name: 'Brush', as: 'brush' },
  swab: { name: 'Lint-free swab', as: 'swab' },
  rag: { name: 'Rag', as: 'rag' },
  releasingSolvent: { name: 'Releasing fluid', as: 'releasingSolvent' },
  diesel: { name: 'Clean diesel', as: 'diesel' },
  acetone: { name: 'Acetone', as: 'acetone' },
  pliers: { name: 'Pliers', as: 'pliers' },
  lever: { name: 'Small lever', as: 'lever' },
  card: { name: 'Piece of card', as: 'card' },
  board: { name: 'Flat board', as: 'board' },
  fuelCan: { name: 'Fuel can', as: 'fuelCan' },
};

/** What a piece of the scene is called on its tag; null for what needs no name (bench, wall). */
export function nameOfPiece(piece: string): string | null {
  return known[piece]?.name ?? null;
}

/** The name by which panels and commands know a piece, or null. */
export function knownAs(piece: string): string | null {
  return known[piece]?.as ?? null;
}

/** Pieces of the scene that go by a name of the rest of the program, the chief one first. */
export function piecesOf(name: string): readonly string[] {
  const alias: Readonly<Record<string, string>> = {
    pump: 'pumpBody',
    body: 'pumpBody',
    loosePump: 'pumpBody',
    window: 'windowCover',
    grip: 'cord',
    filter: 'bowl',
    crank: 'flywheel',
  };
  const wanted = alias[name] ?? name;
  const exact = known[wanted] === undefined ? [] : [wanted];
  return [...exact, ...Object.keys(known).filter((piece) => piece !== wanted && known[piece]?.as === wanted)];
}
