import type { JointId } from '../../sim/set/commands.ts';
import { inMm, quantity, sentence } from '../format.ts';
import { useJob } from '../useJob.ts';
import { jointNames } from '../words/names.ts';

const joints: readonly JointId[] = [
  'pumpNut1',
  'pumpNut2',
  'holder',
  'pipeAtPump',
  'pipeAtInjector',
  'hoseClip',
  'bleedScrew',
];

/** The figures that a maker's data sheet would give, for this invented set only. */
export function DataSheet() {
  const { session } = useJob();
  const def = session.definition;
  return (
    <details className="card-more">
      <summary>Data sheet of this set</summary>
      <p className="card-hint">Invented figures for a generic set. On a real engine use its maker’s data.</p>
      <table className="data figures">
        <tbody>
          {joints.map((id) => (
            <tr key={id}>
              <th scope="row">{sentence(jointNames[id])}</th>
              <td>{quantity(def.joints[id].torque, 'N·m')}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">Shim pack, as built</th>
            <td>{inMm(def.pump.nominalShim, 2)}</td>
          </tr>
          <tr>
            <th scope="row">Injector opens at</th>
            <td>{quantity(def.injector.openingPressure / 1e6, 'MPa')}</td>
          </tr>
        </tbody>
      </table>
    </details>
  );
}
