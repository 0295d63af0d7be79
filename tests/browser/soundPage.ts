import { createPlayer } from '../../src/bench/sound/player.ts';
import type { Bed, Shot } from '../../src/bench/sound/voice.ts';

/** What sounds at one moment, s. */
export type Moment = { at: number; shots: readonly Shot[]; beds: readonly Bed[] };

/** Renders what sounds into memory with the player that the page uses; mono samples. */
export async function render(
  moments: readonly Moment[],
  length: number,
  sampleRate: number,
): Promise<number[]> {
  const context = new OfflineAudioContext(1, length, sampleRate);
  const player = createPlayer(context, context.destination);
  for (const { at, shots, beds } of moments) {
    for (const shot of shots) player.play(shot, at);
    player.hold(beds, at);
  }
  const buffer = await context.startRendering();
  return [...buffer.getChannelData(0)];
}
