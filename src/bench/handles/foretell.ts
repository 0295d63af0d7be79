import type { CleanId, OpeningId, SimCommand } from '../../sim/set/commands.ts';
import type { SimState } from '../../sim/set/state.ts';
import { nameOfPiece } from '../names.ts';
import { gripFor } from './grip.ts';
import { STANDS } from './hammer.ts';
import { controlClick, toolClick } from './use.ts';

const cleaned: Readonly<Record<CleanId, string>> = {
  pumpArea: 'round the pump',
  barrel: 'the barrel',
  plunger: 'the plunger',
  valve: 'the delivery valve',
  shimFace: 'the faces of the shims',
  spill: 'the spill',
};
const openings: Readonly<Record<OpeningId, string>> = {
  engineHole: 'the hole in the engine',
  pipeEnds: 'the pipe’s ends',
  hoseEnd: 'the hose’s end',
  holderEnd: 'the pump’s outlet',
};
const fluids: Readonly<Record<string, string>> = {
  releasingSolvent: 'releasing fluid',
  diesel: 'clean diesel',
  acetone: 'acetone',
};

/** Where the pointer is: the piece, whether that is a tool on the bench, and whether the block lies on the pump. */
export type Over = { readonly piece: string; readonly isTool: boolean; readonly isBlockOn: boolean };

/** What is about to be done, in words that do not say whether it is right; '' where nothing would happen. */
export function foretell(sim: Readonly<SimState>, tool: string, over: Over): string {
  const { piece, isTool, isBlockOn } = over;
  const grip = dragWords(sim, tool, over);
  if (grip !== '') return grip;
  if (piece === 'woodBlock' && isBlockOn) return 'take it off the pump';
  if (isTool) return tool === piece ? 'lay it down' : 'pick it up';
  if (tool === 'woodBlock' && sim.pump.rest !== null && piece === 'pumpBody') return blockWords(sim);
  const act = tool === 'hand' ? controlClick(piece, sim) : toolClick(tool, piece, sim);
  return act === null ? '' : clickWords(act);
}

function blockWords({ pump }: Readonly<SimState>): string {
  if (pump.rest === null || !STANDS.includes(pump.rest)) return 'lay the block on this end';
  return `lay the block on the ${pump.camUp ? 'cam' : 'outlet'} end`;
}

function dragWords(sim: Readonly<SimState>, tool: string, { piece, isBlockOn }: Over): string {
  const grip = gripFor(sim, tool, piece, isBlockOn);
  const name = (nameOfPiece(tool) ?? '').toLowerCase();
  switch (grip?.kind) {
    case 'cord':
      return 'draw it to pull';
    case 'throttle':
      return 'move it along its notches';
    case 'hammer':
      return `draw the ${name} back to swing`;
    case 'joint':
      return `swing the ${name}: undo one way, tighten the other`;
    case 'pin':
      return `press sideways with ${tool === 'hand' ? 'a finger' : `the ${name}`}`;
    case 'pump':
      return 'carry it elsewhere';
    case 'plunger':
      return 'take hold: push, pull or twist';
    case 'part':
      return sim.assembly.parts[grip.part] === 'fitted'
        ? 'draw it away to take it off'
        : 'draw it home to fit it';
    default:
      return '';
  }
}

/** Words for what a click does. */
export function clickWords(act: SimCommand): string {
  switch (act.do) {
    case 'setTap':
      return act.open ? 'open it' : 'close it';
    case 'setCap':
      return act.vented ? 'slacken it' : 'screw it down';
    case 'moveStopLever':
      return `move it to ${act.to}`;
    case 'holdDecompressor':
      return act.held ? 'hold it open' : 'let it go';
    case 'setPlace':
      return placeWords(act);
    case 'turnFlywheel':
      return 'turn it a quarter turn by hand';
    case 'soak':
      return `soak the pair with ${fluids[act.with] ?? act.with}`;
    case 'clean':
      return `${act.with === 'brush' ? 'brush' : 'wipe'} ${cleaned[act.what]} with the ${act.with}`;
    case 'cover':
      return act.on ? `cap ${openings[act.opening]}` : `take the caps off ${openings[act.opening]}`;
    case 'check':
      return 'hold the card to the joints and look for leaks';
    case 'fillTank':
      return 'fill the tank';
    case 'blockInlet':
      return act.on ? 'hold the board over the air inlet' : 'take the board away';
    default:
      return '';
  }
}

function placeWords(act: Extract<SimCommand, { do: 'setPlace' }>): string {
  if (act.what === 'loadIsolated') return act.on ? 'isolate the load' : 'put the load back on';
  if (act.what === 'eyeProtection') return act.on ? 'put them on' : 'take them off';
  return act.what === 'hearingProtection'
    ? `${act.on ? 'lay' : 'take'} them ${act.on ? 'to hand' : 'away'}`
    : '';
}
