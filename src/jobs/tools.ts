import type { HammerId, RestId, SimCommand } from '../sim/set/commands.ts';

/** The tools of the trade that can lie on the roll; the bare hand is always there. */
export const toolIds = [
  'hand',
  'spanner',
  'secondSpanner',
  'torqueWrench',
  'screwdriver',
  'lightHammer',
  'mediumHammer',
  'heavyHammer',
  'sledge',
  'woodBlock',
  'cloth',
  'anvil',
  'vice',
  'tray',
  'caps',
  'brush',
  'swab',
  'rag',
  'releasingSolvent',
  'diesel',
  'acetone',
  'pliers',
  'lever',
  'card',
  'board',
  'fuelCan',
] as const;
export type ToolId = (typeof toolIds)[number];

const hammers: Record<HammerId, ToolId> = {
  light: 'lightHammer',
  medium: 'mediumHammer',
  heavy: 'heavyHammer',
  sledge: 'sledge',
};

const rests: Record<RestId, ToolId> = {
  hand: 'hand',
  cloth: 'cloth',
  anvil: 'anvil',
  vice: 'vice',
  viceBody: 'vice',
  tray: 'tray',
};

function toolsForJoint(command: Extract<SimCommand, { do: 'loosen' | 'tighten' }>): ToolId[] {
  const small = command.joint === 'hoseClip' || command.joint === 'bleedScrew';
  const main: ToolId = small ? 'screwdriver' : command.do === 'tighten' ? 'torqueWrench' : 'spanner';
  return command.backup ? [main, 'secondSpanner'] : [main];
}

/** The tools that an act takes, beyond the bare hand. */
export function toolsFor(command: SimCommand): ToolId[] {
  switch (command.do) {
    case 'loosen':
    case 'tighten':
      return toolsForJoint(command);
    case 'check':
      return command.what === 'leaks' && command.with !== 'finger' ? ['card'] : [];
    case 'fillTank':
      return ['fuelCan'];
    case 'clean':
      return [command.with];
    case 'cover':
      return command.on ? ['caps'] : [];
    case 'placePump':
      return command.on === 'hand' ? [] : [rests[command.on]];
    case 'strike':
      return command.block === 'wood' ? [hammers[command.hammer], 'woodBlock'] : [hammers[command.hammer]];
    case 'pushPin':
      return command.with === 'finger' ? [] : [command.with];
    case 'soak':
      return [command.with];
    case 'blockInlet':
      return command.on ? ['board'] : [];
    default:
      return [];
  }
}
