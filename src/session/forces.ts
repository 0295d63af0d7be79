import type { Command, JobEvent } from '../jobs/job.ts';
import { axialHoldUnderTwist } from '../sim/laws/bond.ts';
import { pinYieldForce } from '../sim/laws/pinBending.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { springForce } from '../sim/set/kinematics.ts';
import { staticFriction, surfaceOf, twistHold } from '../sim/set/pair.ts';
import { type SimState, STEP } from '../sim/set/state.ts';
import { lookAtStrike } from '../sim/set/strikeLook.ts';
import type { DoneAct } from './doneActs.ts';
import type { Held, Seeker } from './seek.ts';

/** One blow or push on pump, plunger or pin: what was put in, against what held and what harms. N, s, m. */
export interface ForceTry {
  /** The act's number. */
  readonly number: number;
  readonly by: 'blow' | 'push' | 'pin';
  /** Set clock, steps. */
  readonly step: number;
  /** Which way it drove the plunger; null for the pin. */
  readonly towards: 'cam' | 'outlet' | null;
  /** Greatest force of hammer or hand. */
  readonly peak: number;
  /**
   * What bore on the bond: of a blow what the plunger's own weight makes of it, the spring's push with it; of a hand all.
   */
  readonly load: number;
  /**
   * Load at which the bond gives way; for a hand with its twist and the spring's help or hindrance reckoned in; null where
   * nothing held.
   */
  readonly needed: number | null;
  /** Least force that harms, of the same kind as the peak; null for a hand, which harms nothing here. */
  readonly harms: number | null;
  /** Force times time, N.s; null for a hand. */
  readonly impulse: number | null;
  readonly trace: readonly { readonly time: number; readonly force: number }[];
  /** How far the plunger went, m; rad for the pin. */
  readonly moved: number;
  /** The plunger lay at its stop that way already. */
  readonly atStop: boolean;
  readonly damaged: readonly string[];
}

type Strike = Extract<Command, { do: 'strike' }>;
type Pushed = Extract<Command, { do: 'pushPlunger' | 'grasp' }>;

/** Most samples of a hand's force that are kept of one hold. */
const MOST_SAMPLES = 3000;

const damagedBy = (events: readonly JobEvent[]): string[] =>
  events.flatMap((event) => (event.kind === 'damaged' ? [`${event.part} ${event.what}`] : []));

/** The state just before an act. */
const before = (seeker: Seeker, { number, from }: DoneAct, near?: Held): Held =>
  seeker.at({ acts: number - 1, step: from }, near);

/** Play within which the plunger counts as lying at a stop, m. */
const AT_STOP = 5e-5;

const isAtStop = (def: SetDefinition, { pump }: Readonly<SimState>, towards: 'cam' | 'outlet'): boolean =>
  towards === 'cam' ? pump.travel < AT_STOP : pump.travel > def.pump.topStop - AT_STOP;

/** Load on the bond that moves the plunger one way, N: the spring helps towards the cam and hinders towards the outlet. */
function neededFor(
  def: SetDefinition,
  sim: Readonly<SimState>,
  towards: 'cam' | 'outlet',
  twist: number,
): number {
  const hold = axialHoldUnderTwist(staticFriction(def, sim), twist, surfaceOf(def).radius);
  const spring = springForce(def, sim, sim.pump.travel);
  return Math.max(0, towards === 'cam' ? hold - spring : hold + spring);
}

function blowOf(seeker: Seeker, act: DoneAct, command: Strike, sim: Readonly<SimState>): ForceTry | null {
  const { def } = seeker.work;
  const event = act.events.find((one) => one.kind === 'struck');
  const look = event === undefined ? null : lookAtStrike(def, sim, command);
  if (event === undefined || look === null) return null;
  return {
    number: act.number,
    by: 'blow',
    step: act.from,
    towards: look.towards,
    peak: look.peak,
    load: look.load,
    needed: look.hold > 0 ? look.hold : null,
    harms: look.harms,
    impulse: look.impulse,
    trace: look.trace,
    moved: event.slip,
    atStop: isAtStop(def, sim, look.towards),
    damaged: damagedBy(act.events),
  };
}

/** What the hand felt from taking hold to letting go, sampled from the model as it is done again. */
function handTrace(
  seeker: Seeker,
  act: DoneAct,
  from: Held,
): { trace: { time: number; force: number }[]; held: Held } {
  const { acts } = seeker.work;
  const trace: { time: number; force: number }[] = [];
  let held = from;
  let done = act.number;
  for (let step = act.after; step <= act.until && trace.length < MOST_SAMPLES; step += 1) {
    for (let next = acts[done]; next?.command.do === 'handTo' && next.step <= step; next = acts[done])
      done += 1;
    held = seeker.at({ acts: done, step }, held);
    const { grasp } = held.job.sim.hand;
    if (grasp === null) break;
    trace.push({ time: (step - act.after) * STEP, force: grasp.force });
  }
  return { trace, held };
}

/** A push, with the job as it stands when the hand lets go: the one that was held has gone on. */
function pushOf(
  seeker: Seeker,
  act: DoneAct,
  command: Pushed,
  from: Held,
  needs: Needs,
): { one: ForceTry; held: Held } {
  const { trace, held } = handTrace(seeker, act, from);
  const peak = trace.reduce((most, { force }) => (Math.abs(force) > Math.abs(most) ? force : most), 0);
  const told = act.events.find((one) => one.kind === 'plungerPushed');
  const way = command.do === 'pushPlunger' ? command.towards : peak < 0 ? 'cam' : 'outlet';
  const most = Math.max(Math.abs(peak), Math.abs(told?.force ?? 0));
  const one: ForceTry = {
    number: act.number,
    by: 'push',
    step: act.from,
    towards: way,
    peak: most,
    load: most,
    needed: needs[way],
    harms: null,
    impulse: null,
    trace,
    moved: told?.moved ?? needs.travel(act),
    atStop: needs.atStop[way],
    damaged: damagedBy(act.events),
  };
  return { one, held };
}

interface Needs {
  readonly cam: number;
  readonly outlet: number;
  readonly atStop: Readonly<Record<'cam' | 'outlet', boolean>>;
  travel(act: DoneAct): number;
}

function pinOf(seeker: Seeker, act: DoneAct, sim: Readonly<SimState>): ForceTry | null {
  const event = act.events.find((one) => one.kind === 'pinPushed');
  if (event === undefined) return null;
  const { def } = seeker.work;
  const { pinDiameter, pinArm, pinYield } = def.pump;
  return {
    number: act.number,
    by: 'pin',
    step: act.from,
    towards: null,
    peak: event.force,
    load: event.force,
    needed: twistHold(def, sim) / pinArm,
    harms: pinYieldForce({
      diameter: pinDiameter,
      arm: pinArm,
      yieldStress: pinYield,
      modulus: def.blow.steelModulus,
    }),
    impulse: null,
    trace: [],
    moved: event.turned,
    atStop: false,
    damaged: damagedBy(act.events),
  };
}

/** Every blow and push of the work in order. Does the work again up to the last of them. */
export function forceTries(seeker: Seeker, acts: readonly DoneAct[]): ForceTry[] {
  const { def } = seeker.work;
  let held: Held | undefined;
  return acts.flatMap((act): ForceTry[] => {
    const { command } = act;
    if (
      command.do !== 'strike' &&
      command.do !== 'pushPlunger' &&
      command.do !== 'grasp' &&
      command.do !== 'pushPin'
    )
      return [];
    if (act.events.some(({ kind }) => kind === 'refused' || kind === 'cardRefused')) return [];
    held = before(seeker, act, held);
    const { sim } = held.job;
    if (command.do === 'strike' || command.do === 'pushPin') {
      const one = command.do === 'strike' ? blowOf(seeker, act, command, sim) : pinOf(seeker, act, sim);
      return one === null ? [] : [one];
    }
    const twist =
      command.do === 'pushPlunger' ? Math.max(0, Math.abs(command.twist) - sim.condition.armFriction) : 0;
    const pushed = pushOf(seeker, act, command, held, {
      cam: neededFor(def, sim, 'cam', twist),
      outlet: neededFor(def, sim, 'outlet', twist),
      atStop: { cam: isAtStop(def, sim, 'cam'), outlet: isAtStop(def, sim, 'outlet') },
      travel: movedIn(acts),
    });
    held = pushed.held;
    return [pushed.one];
  });
}

/** How far a held plunger went, told when the hand lets go. */
const movedIn =
  (acts: readonly DoneAct[]) =>
  ({ number }: DoneAct): number => {
    const next = acts.find(
      (one) => one.number >= number && one.events.some(({ kind }) => kind === 'graspEnded'),
    );
    const event = next?.events.find((one) => one.kind === 'graspEnded');
    return event?.moved ?? 0;
  };
