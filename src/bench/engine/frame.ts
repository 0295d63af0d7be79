import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, hexagon, outline, rise } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';
import { MOUNT_AT } from './generator.ts';
import { tankStand } from './tankStand.ts';

/** Base frame: two channel rails, cross bars, rubber feet, the generator's mounts, and what carries the tank. */
export function frameForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'frame');
  const w = d('width') / 2 - 0.02;
  const rail = d('rail');
  const centre = 0.055;
  const rails = [-w, w].map((z) =>
    painted(
      block(d('length'), rail - 0.012, 0.036, 2 * mm).translate(centre, 0.012 + (rail - 0.012) / 2, z),
      'black',
    ),
  );
  const bars = [-0.27, 0.02, MOUNT_AT, 0.35].map((x) =>
    painted(block(0.036, 0.012, 2 * w, 1 * mm).translate(x, 0.022, 0), 'black'),
  );
  const feet = [-0.22, 0.33].flatMap((x) =>
    [-w, w].map((z) =>
      painted(
        revolve(
          [
            [0, 0],
            [0.02, 0],
            [0.017, 0.014],
            [0, 0.014],
          ],
          { chamfer: 1.5 * mm, segments: 20 },
        ).translate(x, 0, z),
        'rubber',
      ),
    ),
  );
  const bolts = [-0.075, 0.075].map((x) =>
    painted(rise(outline(hexagon(0.013)), 0.007, 0.7 * mm).translate(x, 0.052, 0.125), 'zinc'),
  );
  return joined([...rails, ...bars, ...feet, ...bolts, ...mount(0.058), ...mount(-0.058), ...tankStand(def)]);
}

/** A rubber bobbin between two steel plates, with its bolt through the foot above. */
function mount(z: number): BufferGeometry[] {
  const plate = (y: number): BufferGeometry => revolve(ring(0, 0.018, y, y + 0.0025), { segments: 22 });
  const rubber = revolve(
    [
      [0, 0.0305],
      [0.017, 0.0305, 0.001],
      [0.0125, 0.037, 0],
      [0.0125, 0.045, 0],
      [0.017, 0.0515, 0.001],
      [0, 0.0515],
    ],
    { segments: 24, chamfer: 0 },
  );
  const washer = revolve(ring(0, 0.01, 0.062, 0.0635), { segments: 18 });
  const nut = rise(outline(hexagon(0.013)), 0.007, 0.7 * mm).translate(0, 0.0635, 0);
  return [
    painted(plate(0.028), 'zinc'),
    painted(plate(0.0515), 'zinc'),
    painted(rubber, 'rubber', 1.6),
    painted(washer, 'zinc'),
    painted(nut, 'zinc'),
  ].map((g) => g.translate(MOUNT_AT, 0, z));
}
