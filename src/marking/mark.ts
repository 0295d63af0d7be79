import { type Job, openJob } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { type Help, helpOf, shownSteps, wasShown } from './help.ts';
import { eventsOf } from './judges.ts';
import { type PartName, partFloor } from './rule.ts';
import { rules } from './rules.ts';
import { stopRules } from './stopWork.ts';
import { type Story, sceneOf, tellStory } from './story.ts';
import { partMarks, partsAsked, totalOf } from './total.ts';

/** One line of the marking sheet. earned: 0..1 of the weight; at: model step, null when it never came up. */
export interface MarkLine {
  readonly rule: string;
  readonly part: PartName;
  readonly earned: number;
  readonly weight: number;
  readonly reason: string;
  readonly source: string;
  readonly at: number | null;
  /** The step was shown by a hint and earns nothing for that. */
  readonly isShown: boolean;
}

/** An act that stops the pass, and the step at which it was first done. */
export interface Stop {
  readonly rule: string;
  readonly at: number;
}

export interface MarkingSheet {
  /** 0..100 each. */
  readonly parts: Record<PartName, number>;
  /** 0..100; what the help cost is taken off. */
  readonly total: number;
  /** Help that was asked for, a line for each point. */
  readonly help: Help[];
  readonly passMark: number;
  /** Parts asked for that came to less than their least mark. */
  readonly below: PartName[];
  readonly passed: boolean;
  readonly started: boolean;
  readonly stopWork: Stop[];
  readonly lines: MarkLine[];
  readonly damage: { part: string; what: string; at: number }[];
  /** A new pair had to be ordered. */
  readonly pairReplaced: boolean;
}

function linesOf(story: Story): MarkLine[] {
  const shown = shownSteps(story);
  return rules
    .filter((rule) => rule.applies(story.scenario))
    .map(({ id, part, weight, reason, source, judge }) => {
      const judgement = judge(story);
      const isShown = judgement.earned > 0 && wasShown(shown, id, judgement);
      const earned = isShown ? 0 : Math.max(0, Math.min(1, judgement.earned));
      return { rule: id, part, weight, reason, source, earned, at: judgement.at, isShown };
    });
}

/** The marking sheet of a story; reads nothing but what was done and what came of it. */
export function markStory(story: Story): MarkingSheet {
  const lines = linesOf(story);
  const parts = partMarks(lines);
  const help = helpOf(story);
  const taken = help.reduce((sum, { cost }) => sum + cost, 0);
  const total = Math.max(0, Math.round(10 * (totalOf(lines) - taken)) / 10);
  const below = partsAsked(lines).filter((part) => parts[part] < partFloor);
  const stopWork = stopRules
    .flatMap(({ id, find }) =>
      find(story)
        .slice(0, 1)
        .map((at) => ({ rule: id, at })),
    )
    .sort((a, b) => a.at - b.at);
  const started = eventsOf(story, 'started').length > 0;
  const { passMark } = story.scenario.marking;
  return {
    parts,
    total,
    help,
    passMark,
    below,
    passed: total >= passMark && below.length === 0 && started && stopWork.length === 0,
    started,
    stopWork,
    lines,
    damage: eventsOf(story, 'damaged').map(({ at, event }) => ({ part: event.part, what: event.what, at })),
    pairReplaced: eventsOf(story, 'pairOrdered').length > 0,
  };
}

/** Marks a job from its log. */
export function mark(def: SetDefinition, scenario: Scenario, job: Job): MarkingSheet {
  const start = sceneOf(openJob(def, scenario, job.sim.seed).sim);
  return markStory(tellStory(def, scenario, start, job.log));
}
