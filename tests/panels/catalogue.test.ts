import { describe, expect, it } from 'vitest';
import { core } from '../../src/app/core.ts';
import { toolIds } from '../../src/jobs/tools.ts';
import { type Act, choicesOf, initialValues, openChoice, type Values } from '../../src/panels/acts/act.ts';
import { allActs, groups, thingFor } from '../../src/panels/acts/catalogue.ts';
import { presetFor, thingsFor } from '../../src/panels/tools/tools.ts';
import {
  checkIds,
  cleanIds,
  hammerIds,
  jointIds,
  mendIds,
  openingIds,
  partIds,
  pinToolIds,
  placeIds,
  restIds,
  type SimCommand,
  solventIds,
  strikeTargets,
} from '../../src/sim/set/commands.ts';
import { startState } from '../../src/sim/set/start.ts';
import { def } from './fixture.ts';

const sim = startState(def, 1);

/** Every command that an act can make by its lists and ticks. */
function commandsOf(act: Act): SimCommand[] {
  let all: Values[] = [initialValues(act)];
  for (const choice of act.choices) {
    const values =
      choice.kind === 'pick'
        ? choice.options.map(({ value }) => value)
        : choice.kind === 'yes'
          ? [true, false]
          : [choice.min, choice.max];
    all = all.flatMap((one) => values.map((value) => ({ ...one, [choice.key]: value })));
  }
  return all.map((values) => act.command(values, sim));
}

const commands = allActs().flatMap(({ act }) => commandsOf(act));
const given = (wanted: Record<string, unknown>) =>
  commands.some((command) =>
    Object.entries(wanted).every(([key, value]) =>
      Object.entries(command).some(([k, v]) => k === key && v === value),
    ),
  );

describe('the list of acts', () => {
  const each = <T extends string>(ids: readonly T[], make: (id: T) => Record<string, unknown>) =>
    ids.map((id) => make(id)).filter((wanted) => !given(wanted));

  it('offers every act on every joint, part, opening, place and check that the set knows', () => {
    expect([
      ...each(jointIds, (joint) => ({ do: 'loosen', joint, to: 'slack' })),
      ...each(jointIds, (joint) => ({ do: 'loosen', joint, to: 'off' })),
      ...each(jointIds, (joint) => ({ do: 'tighten', joint })),
      ...each(partIds, (part) => ({ do: 'remove', part })),
      ...each(partIds, (part) => ({ do: 'fit', part })),
      ...each(openingIds, (opening) => ({ do: 'cover', opening })),
      ...each(placeIds, (what) => ({ do: 'setPlace', what })),
      ...each(checkIds, (what) => ({ do: 'check', what })),
      ...each(cleanIds, (what) => ({ do: 'clean', what })),
      ...each(mendIds, (what) => ({ do: 'mend', what })),
    ]).toEqual([]);
  });

  it('offers every rest, hammer, target, fluid and pin tool, right and wrong ones alike', () => {
    expect([
      ...each(restIds, (on) => ({ do: 'placePump', on })),
      ...each(hammerIds, (hammer) => ({ do: 'strike', hammer, block: 'none' })),
      ...each(strikeTargets, (target) => ({ do: 'strike', target, block: 'wood' })),
      ...each(solventIds, (fluid) => ({ do: 'soak', with: fluid })),
      ...each(pinToolIds, (tool) => ({ do: 'pushPin', with: tool })),
      ...each(['card', 'finger'], (tool) => ({ do: 'check', what: 'leaks', with: tool })),
    ]).toEqual([]);
  });

  it('offers every other kind of command', () => {
    const others = [
      'moveThrottle',
      'moveStopLever',
      'holdDecompressor',
      'pullCord',
      'turnFlywheel',
      'setTap',
    ];
    const more = [
      'setCap',
      'fillTank',
      'drainBowl',
      'pushPlunger',
      'grasp',
      'wait',
      'orderPair',
      'blockInlet',
    ];
    expect([...others, ...more].filter((name) => !given({ do: name }))).toEqual([]);
  });

  it('lists no name twice under one group, and no act twice under one thing', () => {
    for (const group of groups) {
      const names = group.things.map(({ name }) => name);
      expect(new Set(names).size).toBe(names.length);
      for (const thing of group.things) {
        const ids = thing.acts.map(({ id }) => id);
        expect(new Set(ids).size, thing.name).toBe(ids.length);
      }
    }
  });

  it('finds the thing for every part and joint that the bench may name', () => {
    expect([...partIds, ...jointIds].filter((id) => thingFor(id) === null)).toEqual([]);
  });

  it('leaves the choices that decide the job to the learner', () => {
    const open = (id: string) => {
      const found = allActs().find(({ act }) => act.id === id);
      return found === undefined ? null : openChoice(found.act, initialValues(found.act));
    };
    expect(open('strike')).toBe('What');
    expect(open('placePump')).toBe('Where');
    expect(open('pushPlunger')).toBe('Which way');
    expect(open('soak')).toBe('Which');
  });

  it('says what every act would do, in a sentence, before and after its choices are made', () => {
    for (const { act } of allActs()) {
      expect(act.say(initialValues(act)), act.id).toMatch(/^[A-Z].*\.$/);
      expect(act.label).toMatch(/^[A-Z]/);
    }
  });

  it('asks at which share of the rope to let go only when the decompressor is let go on the way', () => {
    const pull = allActs().find(({ act }) => act.id === 'pull')?.act;
    if (pull === undefined) throw new Error('no act to pull the cord');
    const keys = (way: string) => choicesOf(pull, { ...initialValues(pull), way }).map(({ key }) => key);
    expect(keys('not')).not.toContain('at');
    expect(keys('during')).toContain('at');
    expect(pull.command({ effort: 'firm', way: 'during', at: 60 }, sim)).toEqual({
      do: 'pullCord',
      effort: 'firm',
      letGoAt: 0.6,
    });
  });
});

describe('a tool in the hand', () => {
  it('has something to work on, whichever tool it is', () => {
    // Cloth, anvil, tray and vice are where the pump is laid; all others are used on something.
    expect(toolIds.filter((tool) => thingsFor(tool, core, sim).length === 0)).toEqual([]);
  });

  it('sets the choice that stands for it and no other', () => {
    const strike = allActs().find(({ act }) => act.id === 'strike')?.act;
    if (strike === undefined) throw new Error('no act to strike');
    expect(presetFor(strike, 'heavyHammer', core, sim)).toEqual({ hammer: 'heavy' });
    expect(presetFor(strike, 'woodBlock', core, sim)).toEqual({ block: 'wood' });
    expect(presetFor(strike, 'spanner', core, sim)).toBeNull();
  });
});
