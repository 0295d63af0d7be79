import { type BufferGeometry, Vector3 } from 'three';
import { expect, it } from 'vitest';
import { painted } from '../../src/bench/look/paints.ts';
import {
  ballPeinForm,
  clubHammerForm,
  crossPeinForm,
  heavyHammerForm,
} from '../../src/bench/place/hammers.ts';
import { def } from '../panels/fixture.ts';

const forms = {
  light: ballPeinForm(),
  medium: crossPeinForm(),
  heavy: heavyHammerForm(),
  sledge: clubHammerForm(),
};
/** From memory: the density of carbon steel, and the masses by which hammers are sold are those of their heads. */
const STEEL = 7850;
/** The heads' faces overlap their bodies by a millimetre, and round faces are drawn as polygons. */
const TOLERANCE = 0.1;

const ASH = tintAt(painted(forms.light.clone(), 'ash'), 0);

/** The tint of a vertex. */
function tintAt(geometry: BufferGeometry, i: number): string {
  const tint = geometry.getAttribute('tint');
  return `${tint.getX(i)} ${tint.getY(i)} ${tint.getZ(i)}`;
}

/** Volume of a head as drawn, m3: its steel's closed surfaces by the divergence theorem, less the eye that the shaft fills. */
function headVolume(geometry: BufferGeometry): number {
  const position = geometry.getAttribute('position');
  const index = geometry.getIndex();
  const corner = (i: number) => new Vector3().fromBufferAttribute(position, index?.getX(i) ?? i);
  const count = index?.count ?? position.count;
  let steel = 0;
  let [wide, depth] = [0, 0];
  const ashHeights: number[] = [];
  for (let i = 0; i < count; i += 3) {
    const corners = [corner(i), corner(i + 1), corner(i + 2)] as const;
    const [a, b, c] = corners;
    if (tintAt(geometry, index?.getX(i) ?? i) !== ASH) {
      steel += a.dot(b.clone().cross(c)) / 6;
      for (const { z } of corners) depth = Math.max(depth, z);
    } else
      for (const { x, y, z } of corners)
        if (z < 0.009) {
          wide = Math.max(wide, Math.abs(x));
          ashHeights.push(y);
        }
  }
  const high = (Math.max(...ashHeights) - Math.min(...ashHeights)) / 2;
  return steel - Math.PI * wide * high * 2 * depth;
}

it('draws every hammer as heavy as the model swings it', () => {
  for (const [id, mass] of Object.entries(def.blow.hammers)) {
    const form = Object.entries(forms).find(([name]) => name === id)?.[1];
    if (form === undefined) throw new Error(`no hammer is drawn for ${id}`);
    const drawn = headVolume(form) * STEEL;
    expect
      .soft(Math.abs(drawn / mass - 1), `${id}: drawn ${drawn.toFixed(3)} kg, swung ${mass} kg`)
      .toBeLessThan(TOLERANCE);
  }
});
