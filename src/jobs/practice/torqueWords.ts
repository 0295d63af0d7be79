import type { SetDefinition } from '../../sim/set/definition.ts';
import { jointLeak } from '../../sim/set/lineState.ts';
import { staticFriction } from '../../sim/set/pair.ts';
import { newtons, quantity } from '../quantity.ts';
import { damageText } from './harmWords.ts';
import type { Given, Judgement } from './piece.ts';

const torqueText = (value: number): string => quantity(value, 'N·m', 1);
const percent = (share: number): string => `${Math.round(100 * Math.abs(share))} in a hundred`;

/** What the model makes of the joint as it was left. */
function effects(def: SetDefinition, { job, before, subject }: Given): string[] {
  const joint = subject.spanner?.joint;
  if (joint === undefined) return [];
  const { torque, clamp } = job.sim.assembly.joints[joint];
  const lines = [`It clamps with ${newtons(clamp)}.`];
  if (joint === 'holder') {
    const more =
      staticFriction(def, job.sim) - staticFriction(def, { ...before, assembly: healthy(def, before) });
    if (more > 1) lines.push(`It draws the barrel in: the plunger binds with ${newtons(more)}.`);
  }
  if (torque < def.joints[joint].weep && joint !== 'pumpNut1' && jointLeak(def, job.sim) > 0)
    lines.push(
      `Under ${torqueText(def.joints[joint].weep)} it weeps as soon as there is pressure in the line.`,
    );
  if (joint === 'pumpNut1' && torque < def.joints[joint].weep)
    lines.push('So slack, it works loose in an hour.');
  return lines;
}

/** The assembly with the holder at its figure, to tell binding by. */
function healthy(def: SetDefinition, before: Given['before']): Given['before']['assembly'] {
  const { joints } = before.assembly;
  return {
    ...before.assembly,
    joints: { ...joints, holder: { ...joints.holder, torque: def.joints.holder.torque } },
  };
}

/** Judges a joint by the torque that the model holds it with: inside the band, nothing spoilt, the body held. */
export function judgeTorque(def: SetDefinition, given: Given, band: number): Judgement {
  const { job, before, subject } = given;
  const use = subject.spanner;
  if (use === null) throw new RangeError(`${subject.name}: no joint to judge`);
  const wanted = def.joints[use.joint].torque;
  const { torque } = job.sim.assembly.joints[use.joint];
  const pulls = job.log.flatMap(({ command }) =>
    command?.do === 'tighten' && command.joint === use.joint ? [command] : [],
  );
  const off = torque / wanted - 1;
  const spoilt = job.sim.damage.slice(before.damage.length).map(damageText);
  const unheld = use.needsBackup && pulls.some(({ backup }) => !backup);
  const right = pulls.length > 0 && Math.abs(off) <= band && spoilt.length === 0 && !unheld;
  if (pulls.length === 0) return { right, says: ['You have not pulled on it yet.'] };
  const aim = wanted / use.length;
  return {
    right,
    says: [
      `${right ? 'Right: ' : ''}${torqueText(torque)} for a figure of ${torqueText(wanted)}, ${Math.abs(off) < 0.01 ? 'to the point' : `${percent(off)} ${off > 0 ? 'over' : 'under'}`}.`,
      ...effects(def, given),
      ...spoilt.map((text) => `It cost something: ${text}.`),
      ...(unheld
        ? ['You did not hold what it screws onto with a second spanner: it turns with the nut.']
        : []),
      ...(Math.abs(off) <= band
        ? []
        : [
            `At ${quantity(100 * use.length, 'cm', 0)} the figure is a pull of ${newtons(aim)}; yours came to ${newtons(torque / use.length)}.`,
          ]),
    ],
  };
}
