import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimEvent } from '../../sim/set/events.ts';
import { burst, clamp, ring, type Shot, shotOf } from './voice.ts';

type Struck = Extract<SimEvent, { kind: 'struck' }>;

/** Modes of a stubby pump body with its flange, Hz, and how readily a blow on the end face finds them. Assumed. */
const BODY: readonly (readonly [number, number])[] = [
  [2300, 0.45],
  [3900, 0.7],
  [6400, 1],
];
/** How long the body rings on what it rests on, s. Assumed: a hand damps, an anvil does not. */
const RINGING: Readonly<Record<string, number>> = { hand: 0.018, cloth: 0.014, vice: 0.04, anvil: 0.06 };
/** Share of the peak force below which the hammer counts as off, and a stop counts as reached, m. */
const OFF = 0.03;
const AT_STOP = 2e-5;
/** Pulse to fall back on where a blow left no trace, s. */
const UNKNOWN = 1e-3;

/** How long hammer and pump were pressed together, s, from the model's own force against time (s, N). */
export function pulseLength(trace: readonly (readonly [number, number])[]): number {
  const peak = Math.max(0, ...trace.map(([, force]) => force));
  const pressed = trace.filter(([, force]) => force > OFF * peak).map(([time]) => time);
  const [first, last] = [pressed[0], pressed.at(-1)];
  return first === undefined || last === undefined || last <= first ? UNKNOWN : last - first;
}

/**
 * Share of a blow's force that reaches a frequency (Hz), 0..1: envelope of the spectrum of a half-sine pulse, flat
 * up to 1/(2 length) and falling by 12 dB an octave above (shock and vibration texts, from memory).
 */
export function pulseReach(frequency: number, length: number): number {
  const x = 2 * frequency * length;
  return 1 / Math.sqrt(1 + x * x * x * x);
}

/** The sounds of one blow: the knock of the contact, the body's ringing as far as the pulse reaches it, the plunger. */
export function blowVoices(event: Struck, def: SetDefinition): Shot[] {
  const length = pulseLength(event.trace);
  const level = clamp(0.12 * Math.log2(1 + event.peakForce / 60), 0.05, 0.9);
  const ringing = RINGING[event.support] ?? 0.018;
  const isSteel = event.block === 'none';
  const rings = BODY.map(([frequency, share]) =>
    ring(frequency, level * share * pulseReach(frequency, length), isSteel ? 2.5 * ringing : ringing),
  );
  const { stiffness } = def.blow.supports[supportOf(event.support)];
  const seat = Math.sqrt(stiffness / def.pump.bodyMass) / (2 * Math.PI);
  if (seat > 60) rings.push(ring(seat, 0.5 * level * pulseReach(seat, length), 0.03));
  const knock = burst(1 / (2 * length), 1.2, level, clamp(8 * length, 0.002, 0.012));
  const blow = shotOf(isSteel ? 'steelBlow' : 'woodBlow', { rings, bursts: [knock] });
  return event.moved ? [blow, ...plungerVoices(event, def)] : [blow];
}

function supportOf(rest: string): 'hand' | 'cloth' | 'anvil' | 'vice' {
  if (rest === 'anvil' || rest === 'cloth') return rest;
  return rest === 'vice' || rest === 'viceBody' ? 'vice' : 'hand';
}

/** What the plunger adds: it slips in its barrel, and ticks where it meets a stop. */
function plungerVoices(event: Struck, def: SetDefinition): Shot[] {
  const way = Math.abs(event.slip);
  const slips = shotOf('slips', {
    bursts: [burst(1500, 1.5, clamp(0.1 + 40 * way, 0.1, 0.3), 0.02)],
    delay: 0.001,
  });
  const atStop = event.travel < AT_STOP || event.travel > def.pump.topStop - AT_STOP;
  if (!atStop) return [slips];
  return [slips, tick(clamp(0.15 + 60 * way, 0.15, 0.5), 0.012)];
}

/** A small hard part meeting a stop: high, short, thin. */
export function tick(level: number, delay = 0): Shot {
  return shotOf('tick', {
    rings: [ring(5200, level, 0.006), ring(7900, 0.5 * level, 0.004)],
    bursts: [burst(6000, 1, 0.3 * level, 0.002)],
    delay,
  });
}
