import type { ToolId } from '../../jobs/tools.ts';
import type { SimState } from '../../sim/set/state.ts';
import type { Act, Choice, Values } from '../acts/act.ts';
import { initialValues } from '../acts/act.ts';
import type { Found } from '../acts/catalogue.ts';
import { groups } from '../acts/catalogue.ts';
import type { Core } from '../core.ts';

/** Name of each tool and what it does, without saying when it is right. */
export const toolWords: Readonly<Record<ToolId, { name: string; use: string }>> = {
  hand: { name: 'Bare hand', use: 'Turns, pulls, pushes, lifts and feels.' },
  spanner: { name: 'Spanner', use: 'Undoes nuts and the delivery-valve holder.' },
  secondSpanner: { name: 'Second spanner', use: 'Holds what the nut sits on.' },
  torqueWrench: { name: 'Torque wrench', use: 'Tightens to the figure you set.' },
  screwdriver: { name: 'Screwdriver', use: 'Clips and small screws.' },
  lightHammer: { name: 'Light hammer', use: 'A head of 0.2 kg.' },
  mediumHammer: { name: 'Bench hammer', use: 'A head of 0.3 kg.' },
  heavyHammer: { name: 'Heavy hammer', use: 'A head of 0.5 kg.' },
  sledge: { name: 'Club hammer', use: 'A head of 1 kg.' },
  woodBlock: { name: 'Beech block', use: 'Goes between hammer and work.' },
  cloth: { name: 'Folded cloth', use: 'A soft rest for the pump.' },
  anvil: { name: 'Anvil', use: 'A hard rest for the pump.' },
  vice: { name: 'Vice, soft jaws', use: 'Grips by the flange or by the body.' },
  tray: { name: 'Clean tray', use: 'Parts lie in it in order.' },
  caps: { name: 'Caps and plugs', use: 'Close open ends against dirt.' },
  brush: { name: 'Brush', use: 'Takes off loose dirt.' },
  swab: { name: 'Lint-free swab', use: 'Wipes faces and bores.' },
  rag: { name: 'Rag', use: 'Wipes spills and housings.' },
  releasingSolvent: { name: 'Releasing fluid', use: 'Creeps into narrow gaps.' },
  diesel: { name: 'Clean diesel', use: 'Wets and rinses.' },
  acetone: { name: 'Acetone', use: 'Dissolves varnish; very volatile.' },
  pliers: { name: 'Pliers', use: 'Grip harder than fingers.' },
  lever: { name: 'Small lever', use: 'Reaches into the window.' },
  card: { name: 'Piece of card', use: 'Shows a leak by its mark.' },
  board: { name: 'Flat board', use: 'Covers the air inlet.' },
  fuelCan: { name: 'Fuel can', use: 'Fresh diesel, strainer in the spout.' },
};

/** The tool that a view names, or null for the bare hand. */
export const toolInHand = (name: string): ToolId | null => (isTool(name) && name !== 'hand' ? name : null);
const isTool = (name: string): name is ToolId => name in toolWords;

const waysOf = (choice: Choice): readonly Values[] => {
  if (choice.kind === 'pick') return choice.options.map(({ value }) => ({ [choice.key]: value }));
  return choice.kind === 'yes' ? [{ [choice.key]: true }, { [choice.key]: false }] : [];
};

/** The choices that bring a tool into an act; null when no choice does. */
export function presetFor(act: Act, tool: ToolId, core: Core, sim: SimState): Values | null {
  const start = initialValues(act);
  const takes = (values: Values) => core.toolsFor(act.command({ ...start, ...values }, sim)).includes(tool);
  const ways = act.choices.flatMap(waysOf);
  // An open choice already stands for its fallback, so a way that names the tool outright comes first.
  return ways.find((way) => takes(way) && !takes(differing(act, way))) ?? (takes({}) ? {} : null);
}

/** The same choice set to something else, to see whether it is this choice that brings the tool. */
function differing(act: Act, way: Values): Values {
  const key = Object.keys(way)[0] ?? '';
  const choice = act.choices.find((one) => one.key === key);
  const other = choice === undefined ? undefined : waysOf(choice).find((one) => one[key] !== way[key]);
  return other ?? {};
}

/** Whether a tool, or the bare hand alone, can do an act. */
export const takesTool = (act: Act, tool: ToolId, core: Core, sim: SimState): boolean =>
  tool === 'hand'
    ? core.toolsFor(act.command(initialValues(act), sim)).length === 0
    : presetFor(act, tool, core, sim) !== null;

/** The things on which a tool can be used, without saying where it should be. */
export function thingsFor(tool: ToolId, core: Core, sim: SimState): readonly Found[] {
  return groups.flatMap((group) =>
    group.things
      .filter((thing) => thing.acts.some((act) => takesTool(act, tool, core, sim)))
      .map((thing) => ({ group, thing })),
  );
}
