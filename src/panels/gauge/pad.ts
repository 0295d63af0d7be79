import type { Effort } from '../../sim/set/commands.ts';

/** What of a gamepad matters here: -1..1 along (outlet positive) and round, grip and lever, 0..1 of the cord. */
export interface PadReading {
  along: number;
  round: number;
  grip: boolean;
  lever: boolean;
  cord: number;
}

/** Sticks rest a little off their middle: less than this is nothing. */
const REST = 0.12;
/** Time in which the trigger is drawn through, ms, up to which a pull counts as so hard. */
const EFFORTS: readonly (readonly [number, Effort])[] = [
  [90, 'hard'],
  [180, 'firm'],
  [360, 'half'],
];

const past = (value: number): number =>
  Math.abs(value) < REST ? 0 : (Math.sign(value) * (Math.abs(value) - REST)) / (1 - REST);

type PadLike = Readonly<{
  axes: readonly number[];
  buttons: readonly Readonly<{ pressed: boolean; value: number }>[];
}>;

/** Reads a pad in the standard layout (W3C Gamepad, from memory): button 0, triggers 6 and 7, stick axes 0 and 1. */
export function readPad({ axes, buttons }: PadLike): PadReading {
  return {
    along: past(-(axes[1] ?? 0)),
    round: past(axes[0] ?? 0),
    grip: buttons[0]?.pressed ?? false,
    lever: (buttons[6]?.value ?? 0) > 0.5,
    cord: buttons[7]?.value ?? 0,
  };
}

/** How hard a pull is that draws the trigger through in so many ms. */
export function effortOfPress(ms: number): Effort {
  return EFFORTS.find(([most]) => ms <= most)?.[1] ?? 'weak';
}
