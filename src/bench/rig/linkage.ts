import { type Material, Quaternion, Vector3 } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { LEVER_TAIL, leverPlaces, throttleAngle } from '../engine/controls.ts';
import { governorAt } from '../engine/frontFittings.ts';
import { governorArmForm, LINK_AT, linkForm, SPRING_AT } from '../engine/linkage.ts';
import { coil } from '../form/coil.ts';
import { mm } from '../form/dims.ts';
import { painted } from '../look/paints.ts';
import { type Piece, pieceOf } from './piece.ts';
import type { Frame } from './posePump.ts';
import { forkAngle } from './poseSet.ts';
import { onSet } from './setPieces.ts';

export type Linkage = {
  readonly pieces: readonly Piece[];
  /** Stands arm, speed spring and stop link as levers and fork stand; hidden where a section takes the front away. */
  show(f: Frame): void;
};

/** The governor's outside: arm on its spindle, speed spring from the throttle, link from the stop lever. */
export function linkage(def: SetDefinition, solid: Material): Linkage {
  const spec = { wire: 0.9 * mm, mean: 6.4 * mm, coils: 10, perCoil: 7 };
  const spring = coil(spec, 50 * mm);
  const arm = pieceOf('governorArm', governorArmForm(), solid);
  const speed = pieceOf('speedSpring', painted(spring.geometry, 'zinc'), solid);
  const link = pieceOf('stopLink', linkForm(), solid);
  const hub = onSet(governorAt(def)).p;
  const levers = leverPlaces(def);
  const throttle = onSet(levers.throttle).p;
  const stop = onSet(levers.stop).p;
  const turn = new Quaternion();
  const a = new Vector3();
  const b = new Vector3();
  /** A point of something turned about z at a place. */
  const turned = (to: Vector3, at: Vector3, angle: number, x: number, y: number, z: number): Vector3 =>
    to
      .set(x, y, 0)
      .applyAxisAngle(Z, angle)
      .add(at)
      .setZ(at.z + z);
  const between = (piece: Piece): number => {
    piece.group.position.copy(a);
    b.sub(a);
    const length = b.length();
    piece.group.quaternion.copy(turn.setFromUnitVectors(Y, b.divideScalar(length)));
    return length;
  };
  return {
    pieces: [arm, speed, link],
    show(f) {
      const seen = !(f.section && f.sim.pump.rest === null);
      for (const piece of [arm, speed, link]) piece.group.visible = seen;
      if (!seen) return;
      const sway = forkAngle(f);
      arm.group.position.copy(hub);
      arm.group.quaternion.setFromAxisAngle(Z, sway);
      turned(a, hub, sway, SPRING_AT[0], SPRING_AT[1], SPRING_AT[2]);
      turned(b, throttle, throttleAngle(f.reading.throttle), 0, -LEVER_TAIL, SPRING_AT[2]);
      spring.setLength(between(speed));
      turned(a, hub, sway, LINK_AT[0], LINK_AT[1], LINK_AT[2]);
      turned(b, stop, f.sim.control.stopLever === 'run' ? 0.34 : -0.34, 0, -LEVER_TAIL, LINK_AT[2]);
      between(link);
    },
  };
}

const Y = new Vector3(0, 1, 0);
const Z = new Vector3(0, 0, 1);
