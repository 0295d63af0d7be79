import { describe, expect, it } from 'vitest';
import {
  countOf,
  figure,
  inDegrees,
  inMm,
  inMm3,
  inNewton,
  inTime,
  inTurnsAMinute,
  quantity,
} from '../../src/panels/format.ts';

const plain = (text: string) => text.replaceAll('\u202f', ' ');

describe('figures on the page', () => {
  it('carry a real minus sign, and zero carries none', () => {
    expect(figure(-12.34, 1)).toBe('\u221212.3');
    expect(figure(-0.04, 1)).toBe('0.0');
  });

  it('stand beside their unit with a space that does not break (SI Brochure, 9th edition, section 5.4.3, from memory)', () => {
    expect(quantity(25, 'N·m')).toBe('25\u202fN·m');
  });

  it('are converted from SI where they are shown and nowhere else', () => {
    expect(plain(inMm(0.0068))).toBe('6.8 mm');
    expect(plain(inMm3(4.4e-8))).toBe('44 mm³');
    expect(plain(inMm3(1.6e-5))).toBe('16.0 mL');
    // One turn is 2 pi rad: 314.16 rad/s is 3000 turns a minute.
    expect(plain(inTurnsAMinute(100 * Math.PI))).toBe('3000 r/min');
    expect(inDegrees(-Math.PI / 2)).toBe('\u221290°');
    expect(plain(inNewton(2097))).toBe('2.1 kN');
    expect(plain(inNewton(-203.4))).toBe('\u2212203 N');
  });

  it('tell time in the unit that a person would use', () => {
    expect(plain(inTime(41))).toBe('41 s');
    expect(plain(inTime(560))).toBe('9 min');
    expect(plain(inTime(7200))).toBe('2 h');
    expect(plain(inTime(7500))).toBe('2 h 5 min');
  });

  it('agree with their noun', () => {
    expect(countOf(1, 'act', 'acts')).toBe('1 act');
    expect(countOf(3, 'act', 'acts')).toBe('3 acts');
  });
});
