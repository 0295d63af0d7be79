import { type HintLevel, type HintSubject, hintCosts } from '../jobs/hints.ts';
import type { StageId } from '../jobs/stages.ts';
import { eventsOf } from './judges.ts';
import type { Judgement } from './rule.ts';
import type { Story } from './story.ts';

/** One point on which help was asked: the deepest level, when that was given, and what it costs of the total. */
export interface Help {
  readonly about: HintSubject;
  readonly point: string;
  readonly level: HintLevel;
  readonly at: number;
  /** 0..100 of the total; 0 where help is free. */
  readonly cost: number;
}

/** The rules whose steps a stage shows when its last hint is given (our judgement); what follows from them counts on. */
const shownByStage: Readonly<Record<StageId, readonly string[]>> = {
  safePlace: ['load-isolated', 'exhaust-led-out', 'no-flame', 'extinguisher', 'eyes'],
  compression: ['compression-proved', 'spun-with-lever-held'],
  airAndSupply: ['air-looked-at', 'fuel-to-the-pump'],
  delivery: ['fuel-at-the-injector', 'pin-watched'],
  decide: ['cause-named', 'struck-out-by-findings'],
  pumpOff: [
    'area-clean-first',
    'openings-covered',
    'holder-cracked-well',
    'cam-low-coming-off',
    'cannot-start',
    'tray-under',
    'lifted-by-two',
  ],
  readPump: ['read-before-freeing'],
  free: [
    'valve-out-first',
    'wood-between',
    'held-softly',
    'end-that-answers',
    'worked-both-ways',
    'cup-held',
  ],
  clean: ['swabbed', 'pair-judged'],
  refit: [
    'new-washer',
    'holder-torque',
    'felt-again',
    'same-shims',
    'cam-low-going-on',
    'pin-in-slot',
    'nuts-in-turn',
    'nut-torque',
    'pin-follows-again',
    'stop-proved-again',
  ],
  putRight: ['mended-for-a-reason'],
  bleed: ['gravity-first', 'pipe-bled', 'lever-held-bleeding', 'union-torque', 'second-spanner'],
  start: ['runaway-guarded', 'hearing'],
  handOver: ['leaks-checked', 'stops-by-lever', 'load-back', 'card-written', 'rags-clear'],
};

/** The rules that a single check earns. */
const checkRules: readonly string[] = [
  'compression-proved',
  'spun-with-lever-held',
  'air-looked-at',
  'fuel-to-the-pump',
  'fuel-at-the-injector',
  'pin-watched',
  'read-before-freeing',
];

/** Every point on which help was asked, in the order in which it was first asked. */
export function helpOf(story: Story): Help[] {
  const points = new Map<string, Help>();
  for (const { at, event } of eventsOf(story, 'hintGiven')) {
    const { about, point, level, isFree } = event;
    const key = `${about} ${point}`;
    const before = points.get(key);
    if (before !== undefined && before.level >= level) continue;
    points.set(key, { about, point, level, at, cost: isFree ? 0 : hintCosts[level] });
  }
  return [...points.values()];
}

/**
 * Whether what a rule asks for had been shown by a hint of the last level before it was done: such a step earns
 * nothing, for it was not the learner's own.
 */
export function wasShown(story: Story, rule: string, { at }: Judgement): boolean {
  const last = eventsOf(story, 'hintGiven', ({ event }) => event.level === 3 && !event.isFree);
  return last.some(({ event, order, at: asked }) => {
    if (event.about === 'nextStep') {
      const shown: Readonly<Record<string, readonly string[]>> = shownByStage;
      return (shown[event.point] ?? []).includes(rule) && (at === null || at >= asked);
    }
    const next = eventsOf(story, 'found', (one) => one.order > order)[0];
    return next !== undefined && at === next.at && checkRules.includes(rule);
  });
}
