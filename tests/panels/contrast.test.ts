import { describe, expect, it } from 'vitest';
import { textOf } from './fixture.ts';

/** Relative luminance of a colour #rrggbb: W3C, WCAG 2.2, definition of relative luminance (from memory). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
/** Contrast ratio: W3C, WCAG 2.2, definition of contrast ratio (from memory). */
function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

const tokens = Object.fromEntries(
  [...textOf('src/app/styles.css').matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map((match) => [
    match[1],
    match[2],
  ]),
);
const colour = (name: string): string => tokens[name] ?? name;

describe('the colours of the page', () => {
  it('reckon contrast as the standard does: black on white is 21 to 1, a colour on itself 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
    expect(contrast('#a8402a', '#a8402a')).toBe(1);
  });

  const texts: [string, string][] = [
    ['ink', 'paper'],
    ['ink', 'paper-shade'],
    ['ink', 'plaster'],
    ['ink-soft', 'paper'],
    ['ink-soft', 'paper-shade'],
    ['ink-soft', 'plaster'],
    ['sage-deep', 'paper'],
    ['blue', 'paper'],
    ['brass-deep', 'paper'],
    ['brass-deep', 'paper-shade'],
    ['rust-deep', 'paper'],
    ['paper', 'ink'],
    // Caution strip, tool roll, tools, stage strip: written where they are used.
    ['#5a2114', '#f3e2d8'],
    ['ink', '#cfc9b6'],
    ['ink', '#d9d4c4'],
    ['#3b4743', '#dfe4dd'],
  ];
  it.each(texts)('let %s be read on %s: at least 4.5 to 1 (WCAG 2.2, 1.4.3)', (text, ground) => {
    expect(contrast(colour(text), colour(ground))).toBeGreaterThanOrEqual(4.5);
  });

  const marks: [string, string][] = [
    ['sage-deep', 'paper'],
    ['brass', 'paper'],
    ['rust', 'paper'],
    ['ink', 'paper'],
  ];
  it.each(marks)(
    'let a line or a dot in %s be seen on %s: at least 3 to 1 (WCAG 2.2, 1.4.11)',
    (mark, ground) => {
      expect(contrast(colour(mark), colour(ground))).toBeGreaterThanOrEqual(3);
    },
  );
});
