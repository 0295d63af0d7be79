import { adviceIds } from '../../jobs/advice.ts';
import type { Command } from '../../jobs/job.ts';
import {
  checkIds,
  cleanIds,
  efforts,
  hammerIds,
  jointIds,
  mendIds,
  openingIds,
  partIds,
  placeIds,
  restIds,
  solventIds,
  strikeTargets,
} from '../../sim/set/commands.ts';
import { scatter } from '../../sim/set/random.ts';
import type { Worker, WorkerView } from '../worker.ts';

/** As many acts as a job takes that is done well. */
const ACTS = 150;

/** One act out of all that there are, any way of doing it as likely. */
function anyAct({ def, scenario, card }: WorkerView, draw: (what: string) => number): Command {
  const one = <T>(all: readonly [T, ...T[]] | readonly T[], what: string): T => {
    const picked = all[Math.floor(draw(what) * all.length)];
    if (picked === undefined) throw new RangeError(`nothing to pick for ${what}`);
    return picked;
  };
  const coin = (what: string) => draw(what) < 0.5;
  const joint = one(jointIds, 'joint');
  const because = card.findings[Math.floor(draw('because') * card.findings.length)];
  const acts: Command[] = [
    { do: 'setPlace', what: one(placeIds, 'place'), on: coin('on') },
    { do: 'check', what: one(checkIds, 'check') },
    { do: 'check', what: one(checkIds, 'look'), with: coin('card') ? 'card' : 'finger' },
    { do: 'moveThrottle', to: draw('throttle') },
    { do: 'moveStopLever', to: coin('stop') ? 'run' : 'stop' },
    { do: 'holdDecompressor', held: coin('held') },
    { do: 'pullCord', effort: one(efforts, 'effort'), letGoAt: coin('letGo') ? 0.6 : null },
    { do: 'turnFlywheel', to: one(['compression', 'lowSide', 'highSide', 'quarterTurn'], 'turn') },
    { do: 'setTap', open: coin('tap') },
    { do: 'fillTank' },
    { do: 'loosen', joint, to: coin('off') ? 'off' : 'slack', backup: coin('backup') },
    { do: 'tighten', joint, torque: def.joints[joint].torque * 2 * draw('torque'), backup: coin('backup') },
    { do: 'remove', part: one(partIds, 'part'), held: coin('hold'), guidePin: coin('guide') },
    { do: 'fit', part: one(partIds, 'part'), held: coin('hold'), guidePin: coin('guide') },
    { do: 'cover', opening: one(openingIds, 'opening'), on: coin('cover') },
    { do: 'clean', what: one(cleanIds, 'clean'), with: one(['brush', 'swab', 'rag'], 'cloth') },
    { do: 'placePump', on: one(restIds, 'rest'), camUp: coin('camUp') },
    {
      do: 'strike',
      target: one(strikeTargets, 'target'),
      hammer: one(hammerIds, 'hammer'),
      speed: 5 * draw('speed'),
      block: coin('block') ? 'wood' : 'none',
    },
    {
      do: 'pushPlunger',
      towards: coin('end') ? 'cam' : 'outlet',
      force: 300 * draw('force'),
      twist: 0,
      seconds: 1,
    },
    { do: 'soak', with: one(solventIds, 'solvent') },
    { do: 'mend', what: one(mendIds, 'mend') },
    { do: 'strikeOut', cause: one(scenario.causes, 'struck') },
    { do: 'writeCard', advice: adviceIds.filter((id) => coin(id)) },
    ...(because
      ? [{ do: 'nameCause' as const, cause: one(scenario.causes, 'named'), because: because.id }]
      : []),
  ];
  return one(acts, 'act');
}

/** Does anything at all, as often as acts are needed for a job done well, and hands over. */
export const fumbling = (seed: number): Worker => ({
  name: 'random',
  *work(view) {
    for (let count = 0; count < ACTS; count += 1)
      yield anyAct(view, (what) => scatter(seed, `${what} at ${view.scenario.title}`, count));
    yield { do: 'handOver' };
  },
});
