import { STRIKE_STEP } from '../../src/sim/laws/strike.ts';
import { type StrikeInput, startMotion, stepMotion } from '../../src/sim/laws/strikeMotion.ts';
import { engineBlow, loadEngine } from '../reference/rigidBody.ts';
import { blowInTime } from '../reference/strikeOde.ts';
import { law, strikeOn, stuckPlunger, supports } from '../sim/freeing/bench.ts';
import type { Result } from './result.ts';
import { curveLines, type Rung, timeAtError, timed } from './timing.ts';

/*
 * A firm blow through wood on a pump in the hand, whose plunger rubs and slips; followed for 4 ms. Error: the
 * larger of the relative ones of slip and body speed, against odex at 1e-11.
 */

const FRICTION = 60;
const SECONDS = 0.004;
const OWN_LADDER = [3.2e-5, 8e-6, STRIKE_STEP, 5e-7];
const ENGINE_LADDER = [1e-4, 3e-5, 1e-5, 3e-6, 1e-6];

const rubbing = { ...law, kineticShare: 1, firstSlipLoss: 0, wetWorking: 1e9, dryWorking: 1e9 };
const input: StrikeInput = strikeOn(
  stuckPlunger(0, 0.004, { law: rubbing, extra: FRICTION, spring: null, seated: -1, top: 1 }),
  { hammerSpeed: 3, support: supports.hand },
);

function ours(dt: number): { slip: number; bodySpeed: number } {
  const motion = startMotion(input);
  for (let i = 0; i < Math.round(SECONDS / dt); i += 1) stepMotion(input, motion, dt);
  return { slip: motion.travel - 0.004, bodySpeed: motion.bodySpeed };
}

/** Our blow against a rigid-body engine given the same forces. */
export async function strikeBench(): Promise<Result> {
  await loadEngine();
  const exact = blowInTime(input, SECONDS, { relative: 1e-11 });
  const errorOf = (found: { slip: number; bodySpeed: number }) =>
    Math.max(Math.abs(found.slip / exact.slip - 1), Math.abs(found.bodySpeed / exact.bodySpeed - 1));
  const rung = (setting: number, run: (dt: number) => { slip: number; bodySpeed: number }, runs: number) => ({
    setting: `${setting * 1e6} us`,
    error: errorOf(run(setting)),
    seconds: timed(() => run(setting), runs).wall,
  });
  const own: Rung[] = OWN_LADDER.map((dt) => rung(dt, ours, 200));
  const engine: Rung[] = ENGINE_LADDER.map((dt) =>
    rung(dt, (at) => engineBlow(input, FRICTION, SECONDS, at), 8),
  );
  const mine = own[OWN_LADDER.indexOf(STRIKE_STEP)];
  if (mine === undefined) throw new Error('the model is not on its own ladder');
  const theirs = timeAtError(engine, mine.error);
  return {
    title: `blow against a rigid-body engine, at the model's error of ${mine.error.toExponential(1)}`,
    value: theirs.seconds / mine.seconds,
    unit: 'times as fast',
    target: 20,
    isBound: theirs.isBound,
    lines: [...curveLines('model', own), ...curveLines('engine', engine)],
  };
}
