import type { SoundId } from './sounds.ts';
import type { Bed, Shot } from './voice.ts';

/** A burst this far down is over, in times of its decay. */
const OVER = 6;
/** How quickly a lasting sound follows what makes it, s. */
const FOLLOW = 0.03;
const NOISE_LENGTH = 2;

/** Plays sounds into a Web Audio graph; knows nothing of sets and sessions. */
export type Player = {
  /** Plays a short sound; `at`: time of the context, s. */
  play(shot: Shot, at: number): void;
  /** Makes the lasting sounds these and no others from `at` on. */
  hold(beds: readonly Bed[], at: number): void;
};

/** White noise, the same each time: a linear congruential generator (Numerical Recipes' constants, from memory). */
function noiseBuffer(context: BaseAudioContext): AudioBuffer {
  const buffer = context.createBuffer(1, NOISE_LENGTH * context.sampleRate, context.sampleRate);
  const samples = buffer.getChannelData(0);
  let word = 12345;
  for (let i = 0; i < samples.length; i += 1) {
    word = (Math.imul(word, 1664525) + 1013904223) >>> 0;
    samples[i] = word / 2_147_483_648 - 1;
  }
  return buffer;
}

/** A player that sounds through `out`. Works with a live context and with one that renders to memory. */
export function createPlayer(context: BaseAudioContext, out: AudioNode): Player {
  const noise = noiseBuffer(context);
  const held = new Map<SoundId, { band: BiquadFilterNode; gain: GainNode }>();
  let turn = 0;

  const playRing = (frequency: number, level: number, decay: number, at: number) => {
    const tone = new OscillatorNode(context, { frequency });
    const gain = new GainNode(context, { gain: 0 });
    gain.gain.setValueAtTime(level, at);
    gain.gain.setTargetAtTime(0, at, decay);
    tone.connect(gain).connect(out);
    tone.start(at);
    tone.stop(at + OVER * decay);
  };
  const playBurst = (burst: Shot['bursts'][number], at: number) => {
    const source = new AudioBufferSourceNode(context, { buffer: noise, loop: true });
    const band = new BiquadFilterNode(context, { type: 'bandpass', frequency: burst.frequency, Q: burst.q });
    const gain = new GainNode(context, { gain: 0 });
    // a narrow band lets less of the noise through: made up for, so that a level means a loudness
    const level = burst.level * Math.sqrt(1 + burst.q) * 1.4;
    gain.gain.setValueAtTime(0, at);
    gain.gain.linearRampToValueAtTime(level, at + burst.rise);
    gain.gain.setTargetAtTime(0, at + burst.rise, burst.decay);
    source.connect(band).connect(gain).connect(out);
    turn = (turn + 0.377) % NOISE_LENGTH;
    source.start(at, turn);
    source.stop(at + burst.rise + OVER * burst.decay);
  };
  const bedFor = (sound: SoundId) => {
    const known = held.get(sound);
    if (known !== undefined) return known;
    const source = new AudioBufferSourceNode(context, { buffer: noise, loop: true });
    const band = new BiquadFilterNode(context, { type: 'bandpass' });
    const gain = new GainNode(context, { gain: 0 });
    source.connect(band).connect(gain).connect(out);
    source.start(0, (held.size * 0.37) % NOISE_LENGTH);
    const made = { band, gain };
    held.set(sound, made);
    return made;
  };

  return {
    play(shot, at) {
      const when = at + shot.delay;
      for (const { frequency, level, decay } of shot.rings) playRing(frequency, level, decay, when);
      for (const burst of shot.bursts) playBurst(burst, when);
    },
    hold(beds, at) {
      for (const { sound, frequency, q, level } of beds) {
        const { band, gain } = bedFor(sound);
        band.frequency.setTargetAtTime(frequency, at, FOLLOW);
        band.Q.setTargetAtTime(q, at, FOLLOW);
        gain.gain.setTargetAtTime(level * Math.sqrt(1 + q) * 1.4, at, FOLLOW);
      }
      for (const [sound, { gain }] of held)
        if (!beds.some((bed) => bed.sound === sound)) gain.gain.setTargetAtTime(0, at, FOLLOW);
    },
  };
}
