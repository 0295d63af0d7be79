import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, outline } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** Air box on its stub; the cover is a part of its own. Axis along z, cover side at the front. */
export function airBoxForm(): BufferGeometry {
  const can = revolve(
    [
      [0, 0],
      [0.05, 0, 4 * mm],
      [0.05, 0.05],
      [0.047, 0.05],
      [0.047, 0.01, 0],
      [0, 0.01, 0],
    ],
    { chamfer: 1 * mm, segments: 44 },
  );
  const stub = revolve(
    [
      [0, -0.035],
      [0.02, -0.035],
      [0.022, 0],
      [0, 0],
    ],
    { segments: 18 },
  );
  const stud = revolve(
    [
      [0, 0.01],
      [0.003, 0.01],
      [0.003, 0.078],
      [0, 0.079],
    ],
    { segments: 8 },
  );
  return joined([painted(can, 'sage'), painted(stub, 'castAluminium'), painted(stud, 'zinc')]).rotateX(
    Math.PI / 2,
  );
}

/** Pleated paper element inside the air box. */
export function elementForm(): BufferGeometry {
  const pleats = outline(
    Array.from({ length: 96 }, (_, i) => {
      const a = (i / 96) * Math.PI * 2;
      const r = i % 2 === 0 ? 0.042 : 0.037;
      return [r * Math.cos(a), r * Math.sin(a)] as const;
    }),
  );
  const body = extrude(pleats, 0.042, 0).translate(0, 0, 0.012);
  const rim = revolve(
    [
      [0.012, 0],
      [0.044, 0],
      [0.044, 0.004],
      [0.012, 0.004],
    ],
    { chamfer: 1 * mm, segments: 26 },
  )
    .rotateX(Math.PI / 2)
    .translate(0, 0, 0.051);
  return joined([painted(body, 'paper'), painted(rim, 'rubber')]);
}

/** Cover of the air box with its wing nut; back at z = 0. */
export function airCoverForm(): BufferGeometry {
  const dish = revolve(
    [
      [0, 0],
      [0.0515, -0.01],
      [0.0525, 0, 0],
      [0.0525, 0.006, 3 * mm],
      [0.03, 0.011, 0],
      [0, 0.012, 0],
    ],
    { chamfer: 0.8 * mm, segments: 44 },
  );
  const hub = revolve(
    [
      [0, 0.011],
      [0.006, 0.011],
      [0.005, 0.02],
      [0, 0.02],
    ],
    { segments: 10 },
  );
  const wing = (s: number): BufferGeometry =>
    block(0.014, 0.009, 0.003, 1 * mm, 3 * mm)
      .rotateZ(s * 0.3)
      .translate(s * 0.011, 0, 0.02);
  return joined([
    painted(dish.rotateX(Math.PI / 2), 'sage'),
    painted(hub.rotateX(Math.PI / 2), 'zinc'),
    painted(wing(1), 'zinc'),
    painted(wing(-1), 'zinc'),
  ]);
}
