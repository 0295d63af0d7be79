import { describe, expect, it } from 'vitest';
import { pulseLength, pulseReach } from '../../../src/bench/sound/blow.ts';
import { captionLine, STAYS } from '../../../src/bench/sound/captionLine.ts';
import { joltOf } from '../../../src/bench/sound/jolts.ts';
import { captions, type SoundId } from '../../../src/bench/sound/sounds.ts';
import { centroid, loudness, type Shot } from '../../../src/bench/sound/voice.ts';
import type { SimCommand } from '../../../src/sim/set/commands.ts';
import type { SetDefinition } from '../../../src/sim/set/definition.ts';
import { def } from '../../panels/fixture.ts';
import { type Ear, listen, names, sessionWith, takeInHand } from './bench.ts';

const seized = [
  { path: 'bond.shear', to: 1.6e6 },
  { path: 'bond.travel', to: 0.0068 },
];

function blow(change: Partial<Extract<SimCommand, { do: 'strike' }>> = {}, set: SetDefinition = def): Ear {
  const session = sessionWith(seized, set);
  takeInHand(session);
  session.do({ do: 'placePump', on: 'cloth', camUp: true });
  return listen(session, {
    do: 'strike',
    target: 'camEnd',
    hammer: 'medium',
    speed: 1.5,
    block: 'wood',
    ...change,
  });
}

const strike = (ear: Ear): Shot => {
  const found = ear.shots.find(({ sound }) => sound === 'woodBlow' || sound === 'steelBlow');
  if (found === undefined) throw new Error('no blow was heard');
  return found;
};

describe('the sound of a blow', () => {
  it('is dull through wood and thin off steel', () => {
    // Common practice, no source: wood knocks, steel rings.
    const wood = strike(blow());
    const steel = strike(blow({ block: 'none' }));
    expect(centroid(steel)).toBeGreaterThan(2 * centroid(wood));
  });

  it('gets brighter as the contact gets stiffer', () => {
    // Pulse length pi sqrt(m/k): a half-sine pulse of that length reaches up to about 1/(2 length).
    // (Impact of a mass on a spring, any text on vibration, from memory.)
    const withWood = (woodStiffness: number) =>
      strike(blow({}, { ...def, blow: { ...def.blow, woodStiffness } }));
    const heights = [1e6, 5e6, 25e6, 125e6].map((stiffness) => centroid(withWood(stiffness)));
    for (const [i, height] of heights.entries()) expect(height).toBeGreaterThan(heights[i - 1] ?? 0);
  });

  it('is louder from a harder blow', () => {
    expect(loudness(strike(blow({ speed: 3 })))).toBeGreaterThan(loudness(strike(blow({ speed: 0.5 }))));
  });

  it('has the length of the contact, which for wood is a good half millisecond', () => {
    // pi sqrt(m/k) with hammer 0.3 kg against body and moving parts 0.81 kg, k 5 MN/m: 0.66 ms loading and unloading
    // without loss; wood that gives back little lets go sooner.
    const [event] = blow().events.filter((one) => one.kind === 'struck');
    if (event?.kind !== 'struck') throw new Error('not struck');
    expect(pulseLength(event.trace)).toBeGreaterThan(0.3e-3);
    expect(pulseLength(event.trace)).toBeLessThan(0.8e-3);
  });

  it('reaches low frequencies whole and falls by 12 dB an octave far above', () => {
    // Spectrum of a half-sine pulse (shock and vibration texts, from memory).
    expect(pulseReach(10, 1e-3)).toBeCloseTo(1, 3);
    expect(pulseReach(8000, 1e-3) / pulseReach(16_000, 1e-3)).toBeCloseTo(4, 1);
  });
});

describe('the sound of the engine and its line', () => {
  const healthy = () => {
    const session = sessionWith([]);
    session.do({ do: 'moveThrottle', to: 1 });
    return session;
  };

  it('tells a pump that delivers from one that has seized', () => {
    // Common practice, no source: a healthy set creaks at the injector when it is spun, a seized pump never does.
    const spin: SimCommand = { do: 'pullCord', effort: 'firm', letGoAt: null };
    const sound = healthy();
    sound.do({ do: 'holdDecompressor', held: true });
    const stuck = sessionWith(seized);
    stuck.do({ do: 'holdDecompressor', held: true });
    expect(names(listen(sound, spin))).toContain('creak');
    const silent = names(listen(stuck, spin));
    expect(silent).not.toContain('creak');
    expect(silent).not.toContain('delivery');
    expect(silent).toContain('cord');
  });

  it('hisses past a held decompressor and holds its breath without', () => {
    const held = sessionWith(seized);
    held.do({ do: 'holdDecompressor', held: true });
    const pull: SimCommand = { do: 'pullCord', effort: 'half', letGoAt: null };
    expect(names(listen(held, pull))).toContain('decompressor');
    const released = names(listen(sessionWith(seized), pull));
    expect(released).toContain('compression');
    expect(released).not.toContain('decompressor');
  });

  it('beats once for each firing of a running engine', () => {
    const session = healthy();
    session.do({ do: 'holdDecompressor', held: true });
    const ear = listen(session, { do: 'pullCord', effort: 'hard', letGoAt: 0.6 }, 6);
    expect(session.sim().engine.running).toBe(true);
    const count = (sound: SoundId) => ear.shots.filter((shot) => shot.sound === sound).length;
    // one firing in two turns
    const { theta } = session.sim().engine;
    expect(Number.isFinite(theta)).toBe(true);
    expect(count('running')).toBeGreaterThan(20);
    expect(count('fast')).toBe(0);
  });
});

describe('the plunger in the hand', () => {
  /** One slow push by 6 mm at the pace of the keys. */
  function push(changes: Parameters<typeof sessionWith>[0]): Ear {
    const session = sessionWith(changes);
    takeInHand(session);
    const from = session.sim().pump.travel;
    const all: Ear = { shots: [], beds: [], events: [] };
    session.do({ do: 'grasp', part: 'plunger' });
    for (let i = 1; i <= 80; i += 1) {
      const ear = listen(session, { do: 'handTo', travel: from + i * 1.5e-4, twist: 0 }, 0.05);
      all.shots.push(...ear.shots);
      all.beds.push(...ear.beds);
    }
    return all;
  }

  it('is silent while it is stuck, hisses when it is free, and grates when it drags', () => {
    // Common practice, no source.
    expect(names(push([{ path: 'bond.shear', to: 1.6e6 }]))).toEqual(new Set());
    const free = names(push([]));
    expect(free).toContain('slides');
    expect(free).not.toContain('grates');
    const sticky = names(push([{ path: 'bond.shear', to: 2e5 }]));
    expect(sticky).toContain('grates');
    expect(sticky).toContain('letsGo');
  });
});

describe('every sound', () => {
  it('has words, and stays within what can be heard and played', () => {
    const session = sessionWith([]);
    session.do({ do: 'holdDecompressor', held: true });
    const ear = listen(session, { do: 'pullCord', effort: 'hard', letGoAt: 0.6 }, 5);
    takeInHand(sessionWith(seized));
    const shots = [...ear.shots, ...blow({ block: 'none', speed: 8, hammer: 'sledge' }).shots];
    for (const { sound, rings, bursts, delay } of shots) {
      expect(captions[sound].length).toBeGreaterThan(3);
      expect(delay).toBeGreaterThanOrEqual(0);
      for (const { frequency, level, decay } of [...rings, ...bursts]) {
        expect(frequency).toBeGreaterThan(20);
        expect(frequency).toBeLessThan(16_000);
        expect(level).toBeLessThanOrEqual(1);
        expect(level).toBeGreaterThanOrEqual(0);
        expect(decay).toBeGreaterThan(0);
      }
    }
    for (const { level, frequency } of ear.beds) {
      expect(level).toBeLessThanOrEqual(0.6);
      expect(frequency).toBeGreaterThan(20);
    }
  });

  it('is named while it is fresh, the telling ones and the latest first, and no more than three at once', () => {
    const when = new Map<SoundId, number>([
      ['cord', 0],
      ['valveTick', 0],
      ['compression', 0],
      ['creak', 0],
    ]);
    const line = captionLine(when, 100);
    expect(line.startsWith(captions.creak)).toBe(true);
    expect(line).toContain(captions.compression);
    expect(line.split('; ')).toHaveLength(3);
    expect(captionLine(when, STAYS + 1)).toBe('');
  });
});

describe('vibration', () => {
  it('comes of what a hand would feel, the stronger the blow the more, and of nothing else', () => {
    const soft = joltOf(blow({ speed: 0.5 }).shots);
    const hard = joltOf(blow({ speed: 3 }).shots);
    expect(soft).not.toBeNull();
    expect(hard?.strength).toBeGreaterThan(soft?.strength ?? 1);
    expect(joltOf([{ sound: 'valveTick', rings: [], bursts: [], delay: 0 }])).toBeNull();
  });
});
