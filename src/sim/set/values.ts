import type { SimCommand } from './commands.ts';

/** What hands, tools and patience can give, SI; a number outside comes from a broken recording or a wrong program. */
const ranges: Readonly<Record<string, readonly [least: number, most: number]>> = {
  to: [0, 1],
  letGoAt: [0, 1],
  torque: [0, 200],
  speed: [0, 10],
  force: [0, 1000],
  twist: [-10, 10],
  seconds: [0, 2_592_000],
  travel: [-1, 1],
  thickness: [0, 0.005],
};

/** Name of the first number in a command that nobody could give, or null. */
export function badValue(command: SimCommand): string | null {
  for (const [key, value] of Object.entries(command)) {
    const range = ranges[key];
    if (typeof value === 'number' && range && !(value >= range[0] && value <= range[1])) return key;
  }
  return null;
}
