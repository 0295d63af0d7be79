import { describe, expect, it } from 'vitest';
import { effortOfPress, readPad } from '../../src/panels/gauge/pad.ts';

const pad = (x: number, y: number, pressed: readonly number[] = []) => ({
  axes: [x, y, 0, 0],
  buttons: Array.from({ length: 17 }, (_, i) => ({
    pressed: pressed.includes(i),
    value: pressed.includes(i) ? 1 : 0,
  })),
});

describe('a gamepad as a hand', () => {
  it('pushes up the screen towards the outlet, and rests in the middle', () => {
    // W3C Gamepad, standard layout (from memory): axis 1 is negative when the stick is pushed away.
    expect(readPad(pad(0, -1)).along).toBe(1);
    expect(readPad(pad(1, 0)).round).toBe(1);
    expect(readPad(pad(0.05, -0.05))).toMatchObject({ along: 0, round: 0 });
  });

  it('grips with the first button, holds the lever with the left trigger, pulls with the right', () => {
    expect(readPad(pad(0, 0, [0, 6, 7]))).toMatchObject({ grip: true, lever: true, cord: 1 });
    expect(readPad(pad(0, 0))).toMatchObject({ grip: false, lever: false, cord: 0 });
  });

  it('takes a quick pull for a hard one', () => {
    expect([50, 150, 300, 900].map(effortOfPress)).toEqual(['hard', 'firm', 'half', 'weak']);
  });
});
