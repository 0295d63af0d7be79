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
export const shownByStage: Readonly<Record<StageId, readonly string[]>> = {
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

/** Steps that a hint of the last level showed: which rules ask for them, from when on, or at which step alone. */
interface ShownSteps {
  readonly rules: readonly string[];
  readonly from: number;
  readonly to: number;
}

/** Every hint of the last level that was paid for, with the steps that it showed. */
export function shownSteps(story: Story): ShownSteps[] {
  const stages: Readonly<Record<string, readonly string[]>> = shownByStage;
  const finds = eventsOf(story, 'found');
  let next = 0;
  return eventsOf(story, 'hintGiven', ({ event }) => event.level === 3 && !event.isFree).flatMap(
    ({ event, order, at }) => {
      if (event.about === 'nextStep')
        return [{ rules: stages[event.point] ?? [], from: at, to: Number.POSITIVE_INFINITY }];
      while (next < finds.length && (finds[next]?.order ?? 0) <= order) next += 1;
      const found = finds[next];
      return found ? [{ rules: checkRules, from: found.at, to: found.at }] : [];
    },
  );
}

/**
 * Whether what a rule asks for had been shown by a hint of the last level before it was done: such a step earns
 * nothing, for it was not the learner's own.
 */
export const wasShown = (steps: readonly ShownSteps[], rule: string, { at }: Judgement): boolean =>
  steps.some(({ rules, from, to }) => {
    const inTime = at === null ? to === Number.POSITIVE_INFINITY : at >= from && at <= to;
    return inTime && rules.includes(rule);
  });
