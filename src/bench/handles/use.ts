import type { CleanId, OpeningId, SimCommand, SolventId } from '../../sim/set/commands.ts';
import type { SimState } from '../../sim/set/state.ts';

const fluids: readonly string[] = ['releasingSolvent', 'diesel', 'acetone'] satisfies SolventId[];
const isFluid = (tool: string): tool is SolventId => fluids.includes(tool);

const loosePump: ReadonlySet<string> = new Set([
  'pumpBody',
  'barrel',
  'plunger',
  'cup',
  'retainer',
  'returnSpring',
  'springPlate',
  'pin',
  'holder',
  'valveSeat',
]);

const wiped: Readonly<Record<string, CleanId>> = {
  barrel: 'barrel',
  pumpBody: 'barrel',
  plunger: 'plunger',
  valve: 'valve',
  valveSeat: 'valve',
  shim0: 'shimFace',
  shim1: 'shimFace',
  camBox: 'shimFace',
  benchTop: 'spill',
  tray: 'spill',
};

const openings: Readonly<Record<string, OpeningId>> = {
  camBox: 'engineHole',
  coverEngine: 'engineHole',
  studs: 'engineHole',
  pipe: 'pipeEnds',
  coverPipe1: 'pipeEnds',
  coverPipe2: 'pipeEnds',
  hose: 'hoseEnd',
  coverHose: 'hoseEnd',
  holder: 'holderEnd',
  coverHolder: 'holderEnd',
  pumpBody: 'holderEnd',
};

/** What a click on a control does with the bare hand; null for what only a drag moves or what does nothing. */
export function controlClick(piece: string, sim: Readonly<SimState>): SimCommand | null {
  switch (piece) {
    case 'tap':
    case 'tapBody':
      return { do: 'setTap', open: !sim.supply.tapOpen };
    case 'cap':
      return { do: 'setCap', vented: !sim.supply.capVented };
    case 'stopLever':
    case 'stopPlate':
      return { do: 'moveStopLever', to: sim.control.stopLever === 'run' ? 'stop' : 'run' };
    case 'decompressor':
      return { do: 'holdDecompressor', held: !sim.control.decompressorHeld };
    case 'plug':
      return { do: 'setPlace', what: 'loadIsolated', on: !sim.place.loadIsolated };
    case 'glasses':
      return { do: 'setPlace', what: 'eyeProtection', on: true };
    case 'defenders':
      return { do: 'setPlace', what: 'hearingProtection', on: true };
    case 'flywheel':
      return { do: 'turnFlywheel', to: 'quarterTurn' };
    default:
      return null;
  }
}

/** What a click on a piece does with a tool in the hand; null where the tool does nothing there. */
export function toolClick(tool: string, piece: string, sim: Readonly<SimState>): SimCommand | null {
  if (isFluid(tool))
    return sim.pump.rest !== null && loosePump.has(piece) ? { do: 'soak', with: tool } : null;
  switch (tool) {
    case 'swab':
    case 'brush':
    case 'rag':
      return cleaning(tool, piece, sim);
    case 'caps': {
      const opening = openings[piece];
      return opening === undefined ? null : { do: 'cover', opening, on: !sim.assembly.covered[opening] };
    }
    case 'card':
      return [
        'pipe',
        'pipeAtPump',
        'pipeAtInjector',
        'injector',
        'holder',
        'hose',
        'bleedScrew',
        'pumpBody',
      ].includes(piece)
        ? { do: 'check', what: 'leaks', with: 'card' }
        : null;
    case 'fuelCan':
      return piece === 'tank' || piece === 'cap' ? { do: 'fillTank' } : null;
    case 'board':
      return ['airBox', 'airCover', 'airElement'].includes(piece)
        ? { do: 'blockInlet', on: sim.engine.inletBlocked < 1 }
        : null;
    default:
      return null;
  }
}

function cleaning(tool: 'swab' | 'brush' | 'rag', piece: string, sim: Readonly<SimState>): SimCommand | null {
  const onEngine = sim.pump.rest === null && sim.assembly.parts.pump === 'fitted';
  const pumpArea = [
    'pumpBody',
    'pumpNut1',
    'pumpNut2',
    'holder',
    'pipeAtPump',
    'hose',
    'bleedScrew',
    'windowCover',
    'camBox',
  ];
  if (onEngine && pumpArea.includes(piece)) return { do: 'clean', what: 'pumpArea', with: tool };
  const what = wiped[piece];
  return what === undefined ? null : { do: 'clean', what, with: tool };
}
