import type { SetDefinition } from '../../sim/set/definition.ts';
import type { SimEvent } from '../../sim/set/events.ts';
import type { Job } from '../job.ts';
import { millimetres, newtons } from '../quantity.ts';
import { damageText } from './harmWords.ts';
import type { Given, Judgement } from './piece.ts';
import { leastBlow } from './trialBlows.ts';

type Struck = Extract<SimEvent, { kind: 'struck' }>;

/** One blow with what it was answered by. */
interface Blow {
  readonly struck: Struck;
  readonly spoilt: readonly string[];
}

function blowsOf(job: Readonly<Job>): Blow[] {
  return job.log.flatMap(({ events }) => {
    const struck = events.find((event): event is Struck & SimEvent => event.kind === 'struck');
    if (struck === undefined) return [];
    const spoilt = events.flatMap((event) => (event.kind === 'damaged' ? [damageText(event)] : []));
    return [{ struck, spoilt }];
  });
}

const text = (parts: readonly string[]): string => parts.join(' and ');

function whyNot(blows: readonly Blow[], moving: Blow | undefined, spoilt: readonly string[]): string | null {
  if (blows.length === 0) return 'You have not struck it.';
  if (spoilt.length > 0) return `It cost something: ${text(spoilt)}.`;
  if (moving === undefined)
    return `It has not moved under ${blows.length === 1 ? 'one blow' : `${blows.length} blows`}, of ${newtons(Math.max(...blows.map(({ struck }) => struck.peakForce)))} at most.`;
  return null;
}

/** How the strength of the blow stood to the least that would have done, as a sentence. */
function measured(peak: number, least: number | null): string {
  if (least === null) return 'As it was handed over, no blow that the body bears would have moved it.';
  const share = Math.round(100 * (peak / least - 1));
  const head = `The least single blow that moves it as it was handed over is ${newtons(least)}`;
  if (share > 4) return `${head}: yours was harder by ${share} in a hundred.`;
  return share < -4
    ? `${head}: yours needed less, because the taps before it had worn the bond.`
    : `${head}: yours was just that.`;
}

/** What would have told or done more. */
function advice(given: Given, blows: readonly Blow[], moving: Blow | undefined): string[] {
  const first = blows[0]?.struck;
  if (first === undefined) return ['Begin with the light hammer, through the block.'];
  if (blows.some(({ struck }) => struck.block === 'none'))
    return ['Keep the block between: steel on the part marks it at any speed.'];
  if (blows.some(({ struck }) => struck.target === 'outletEnd'))
    return [
      'The outlet end drives it further up, or not at all. The plunger goes towards the end that is struck.',
    ];
  if (blows.some(({ struck }) => struck.target !== 'camEnd'))
    return [
      'Strike the body, not the plunger or its cup: the plunger is to stay behind while the body jumps.',
    ];
  const hasSoaked = given.job.log.some(({ command }) => command?.do === 'soak');
  if (moving === undefined && !hasSoaked)
    return ['Put solvent to it, give it an hour or two, and tap again.'];
  return [`Your first blow was ${newtons(first.peakForce)}. Go up in steps of a quarter from the lightest.`];
}

/** Judges the blows: it moved, nothing was spoilt, and the hardest was not much more than it took. */
export function judgeHowHard(def: SetDefinition, given: Given, pasts: readonly number[]): Judgement {
  const { before, job, level } = given;
  const past = pasts[Math.min(level, pasts.length - 1)] ?? 1.5;
  const blows = blowsOf(job);
  const moving = blows.find(({ struck }) => struck.moved && struck.slip < 0);
  const spoilt = blows.flatMap((blow) => blow.spoilt);
  const why = whyNot(blows, moving, spoilt);
  if (why !== null && (spoilt.length > 0 || blows.length === 0))
    return { right: false, says: [`Not yet. ${why}`, ...advice(given, blows, moving)] };
  const least = leastBlow(def, before, 'camEnd', def.blow.damageForce);
  if (why !== null || moving === undefined)
    return {
      right: false,
      says: [
        `Not yet. ${why}`,
        ...(least === null ? [measured(0, least)] : []),
        ...advice(given, blows, moving),
      ],
    };
  const peak = Math.max(...blows.map(({ struck }) => struck.peakForce));
  // where blows alone will not do, it is enough that the body bore the hardest
  const right = least === null || peak <= past * least;
  return {
    right,
    says: [
      `${right ? 'Right.' : 'Harder than it needed.'} It moved ${millimetres(Math.abs(moving.struck.slip), 2)} at ${newtons(moving.struck.peakForce)}, blow ${blows.indexOf(moving) + 1} of ${blows.length}; nothing spoilt.`,
      measured(peak, least),
      ...(right ? [] : advice(given, blows, moving)),
    ],
  };
}
