import * as v from 'valibot';
import {
  checkIds,
  cleanIds,
  efforts,
  hammerIds,
  jointIds,
  mendIds,
  openingIds,
  partIds,
  pinToolIds,
  placeIds,
  restIds,
  solventIds,
  strikeTargets,
} from '../sim/set/commands.ts';
import { adviceIds } from './advice.ts';
import { causeIds } from './causes.ts';
import { hintLevels, hintSubjects } from './hints.ts';
import type { Command } from './job.ts';

const finite = v.pipe(v.number(), v.finite('a finite number'));
const yes = v.boolean();
const act = <const N extends Command['do'], const E extends v.ObjectEntries>(name: N, entries: E) =>
  v.strictObject({ do: v.literal(name), ...entries });

/** A command as it stands in a file; the shapes are those of `Command`, which the compiler and a test hold together. */
export const commandSchema: v.GenericSchema<unknown, Command> = v.variant('do', [
  act('setPlace', { what: v.picklist(placeIds), on: yes }),
  act('check', { what: v.picklist(checkIds), with: v.exactOptional(v.picklist(['card', 'finger'])) }),
  act('moveThrottle', { to: finite }),
  act('moveStopLever', { to: v.picklist(['run', 'stop']) }),
  act('holdDecompressor', { held: yes }),
  act('pullCord', { effort: v.picklist(efforts), letGoAt: v.nullable(finite) }),
  act('turnFlywheel', { to: v.picklist(['compression', 'lowSide', 'highSide', 'quarterTurn']) }),
  act('setTap', { open: yes }),
  act('setCap', { vented: yes }),
  act('fillTank', {}),
  act('drainBowl', {}),
  act('loosen', { joint: v.picklist(jointIds), to: v.picklist(['slack', 'off']), backup: yes }),
  act('tighten', {
    joint: v.picklist(jointIds),
    torque: finite,
    backup: yes,
    newWasher: v.exactOptional(yes),
  }),
  act('remove', { part: v.picklist(partIds), held: v.exactOptional(yes), guidePin: v.exactOptional(yes) }),
  act('fit', {
    part: v.picklist(partIds),
    held: v.exactOptional(yes),
    guidePin: v.exactOptional(yes),
    turned: v.exactOptional(yes),
    thickness: v.exactOptional(finite),
    wet: v.exactOptional(yes),
  }),
  act('cover', { opening: v.picklist(openingIds), on: yes }),
  act('clean', { what: v.picklist(cleanIds), with: v.picklist(['brush', 'swab', 'rag']) }),
  act('placePump', { on: v.picklist(restIds), camUp: yes }),
  act('strike', {
    target: v.picklist(strikeTargets),
    hammer: v.picklist(hammerIds),
    speed: finite,
    block: v.picklist(['wood', 'none']),
  }),
  act('pushPin', { with: v.picklist(pinToolIds), towards: v.picklist(['stop', 'full']), force: finite }),
  act('pushPlunger', {
    towards: v.picklist(['cam', 'outlet']),
    force: finite,
    twist: finite,
    seconds: finite,
  }),
  act('grasp', { part: v.literal('plunger') }),
  act('handTo', { travel: finite, twist: finite }),
  act('letGo', {}),
  act('soak', { with: v.picklist(solventIds) }),
  act('wait', { seconds: finite }),
  act('orderPair', {}),
  act('mend', { what: v.picklist(mendIds) }),
  act('blockInlet', { on: yes }),
  act('strikeOut', { cause: v.picklist(causeIds) }),
  act('restore', { cause: v.picklist(causeIds) }),
  act('nameCause', {
    cause: v.picklist(causeIds),
    because: v.pipe(v.string(), v.maxLength(60, 'at most 60 characters')),
  }),
  act('judgePair', { verdict: v.picklist(['fitForUse', 'replace']) }),
  act('writeCard', { advice: v.pipe(v.array(v.picklist(adviceIds)), v.maxLength(20, 'at most 20')) }),
  act('handOver', {}),
  act('askHint', { level: v.picklist(hintLevels), about: v.picklist(hintSubjects) }),
]);
