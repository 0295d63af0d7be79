import type { SoundId } from './sounds.ts';
import { clamp, loudness, type Shot } from './voice.ts';

/** What a hand would feel of a sound: how long, ms, and how strongly, 0..1. */
export type Jolt = { readonly ms: number; readonly strength: number };

/** Sounds that come through the hand that holds the part; others only reach the ear. Length at full strength, ms. */
const FELT: Readonly<Partial<Record<SoundId, number>>> = {
  woodBlow: 45,
  steelBlow: 25,
  slips: 20,
  letsGo: 30,
  stop: 22,
  springHome: 40,
  bounce: 90,
  kickBack: 220,
  cracksLoose: 35,
  tightened: 25,
  crushed: 140,
  pinGives: 90,
  firing: 60,
};

/** The strongest jolt among some sounds, or null when none comes through the hand. */
export function joltOf(shots: readonly Shot[]): Jolt | null {
  let strongest: Jolt | null = null;
  for (const shot of shots) {
    const length = FELT[shot.sound];
    if (length === undefined) continue;
    const strength = clamp(1.6 * loudness(shot), 0, 1);
    if (strongest === null || strength > strongest.strength)
      strongest = { ms: Math.max(8, Math.round(length * (0.4 + 0.6 * strength))), strength };
  }
  return strongest;
}
