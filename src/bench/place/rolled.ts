import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, type Flat, outline, rise } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';
import { lay } from './tools.ts';

/** Flat screwdriver with a turned handle. */
export function screwdriverForm(): BufferGeometry {
  const blade = block(0.0072, 0.0016, 0.018, 0.3 * mm).translate(0, 0.013, -0.005);
  const rod = lay(
    [
      [0, 0],
      [0.0032, 0],
      [0.0032, 0.11],
      [0, 0.11],
    ],
    'plainSteel',
    0.013,
    14,
  );
  const handle = lay(
    [
      [0, 0.105],
      [0.006, 0.105],
      [0.009, 0.11, 0],
      [0.0085, 0.122, 0],
      [0.0128, 0.135, 0],
      [0.0132, 0.18, 0],
      [0.0105, 0.205, 2 * mm],
      [0, 0.208],
    ],
    'ash',
    0.013,
    12,
  );
  const collar = lay(
    [
      [0, 0.1],
      [0.0062, 0.1],
      [0.0062, 0.112],
      [0, 0.112],
    ],
    'brass',
    0.013,
    16,
  );
  return joined([painted(blade, 'plainSteel'), rod, handle, collar]);
}

/** Combination pliers. */
export function pliersForm(): BufferGeometry {
  const jaw = (s: number): BufferGeometry =>
    extrude(
      outline(
        [
          [0.0006 * s, -0.006],
          [0.009 * s, -0.002],
          [0.0085 * s, 0.018],
          [0.0045 * s, 0.042],
          [0.0006 * s, 0.042],
        ],
        1 * mm,
      ),
      0.009,
      0.8 * mm,
    )
      .rotateX(-Math.PI / 2)
      .translate(0, 0.002, 0);
  const hub = rise(
    outline(
      Array.from(
        { length: 24 },
        (_, i) => [0.0125 * Math.cos((i / 24) * 6.2832), 0.0125 * Math.sin((i / 24) * 6.2832)] as const,
      ),
    ),
    0.012,
    1 * mm,
  );
  const arm = (s: number): BufferGeometry => {
    const pts: Flat[] = [
      [s * 0.002, 0],
      [s * 0.011, -0.02],
      [s * 0.022, -0.06],
      [s * 0.02, -0.13],
      [s * 0.012, -0.132],
      [s * 0.012, -0.062],
      [s * -0.003, -0.01],
    ];
    return extrude(outline(s > 0 ? [...pts].reverse() : pts, 4 * mm), 0.009, 2 * mm, 5)
      .rotateX(-Math.PI / 2)
      .translate(0, 0.0015, 0);
  };
  return joined([
    painted(jaw(1), 'darkSteel'),
    painted(jaw(-1), 'darkSteel'),
    painted(hub, 'plainSteel'),
    painted(arm(1), 'trayRim'),
    painted(arm(-1), 'trayRim'),
  ]);
}

/** Lever bar: a flat bar with a bevelled, slightly turned-up end. */
export function leverBarForm(): BufferGeometry {
  const bar = block(0.016, 0.006, 0.24, 1 * mm).translate(0, 0.004, 0.12);
  const toe = block(0.016, 0.004, 0.03, 0.8 * mm)
    .rotateX(0.35)
    .translate(0, 0.0085, -0.012);
  return joined([painted(bar, 'darkSteel'), painted(toe, 'plainSteel')]);
}

/** Swab: lint-free wrap on a wooden stick. */
export function swabForm(): BufferGeometry {
  const stick = lay(
    [
      [0, 0],
      [0.0022, 0],
      [0.0022, 0.16],
      [0, 0.16],
    ],
    'ash',
    0.006,
    10,
  );
  const tip = lay(
    [
      [0, -0.03],
      [0.003, -0.028, 0],
      [0.005, -0.014, 0],
      [0.0042, 0.006, 0],
      [0, 0.008],
    ],
    'white',
    0.006,
    14,
    0,
  );
  return joined([stick, tip]);
}

/** Flat brush. */
export function brushForm(): BufferGeometry {
  const hair = block(0.03, 0.009, 0.045, 2 * mm).translate(0, 0.007, -0.02);
  const band = block(0.032, 0.0115, 0.02, 0.6 * mm).translate(0, 0.007, 0.008);
  const handle = extrude(
    outline(
      [
        [-0.014, -0.016],
        [-0.005, -0.05],
        [-0.0075, -0.12],
        [0.0075, -0.12],
        [0.005, -0.05],
        [0.014, -0.016],
      ],
      6 * mm,
    ),
    0.01,
    2.5 * mm,
    5,
  )
    .rotateX(-Math.PI / 2)
    .translate(0, 0.002, 0);
  return joined([painted(hair, 'bristle'), painted(band, 'zinc'), painted(handle, 'beechBlock')]);
}

/** A piece of stiff card for finding leaks. */
export function cardForm(): BufferGeometry {
  return painted(block(0.07, 0.0012, 0.1, 0.2 * mm).translate(0, 0.0008, 0.03), 'card');
}

/** Plastic caps for open pipe ends and holes, a small heap of three. */
export function capsForm(): BufferGeometry {
  const one = (x: number, z: number, r: number): BufferGeometry =>
    painted(
      revolve(
        [
          [0, 0],
          [r + 0.003, 0],
          [r + 0.003, 0.002],
          [r, 0.003, 0],
          [r - 0.0006, 0.014],
          [0, 0.014],
        ],
        { segments: 14 },
      ).translate(x, 0, z),
      'signRed',
    );
  return joined([one(0, 0, 0.008), one(0.024, 0.012, 0.0065), one(0.004, 0.03, 0.0065)]);
}

/** Canvas roll laid open: a sheet with stitched pockets along its near side, and its ties. */
export function toolRollForm(width: number, depth: number): BufferGeometry {
  const base = block(width, 0.0024, depth, 0.8 * mm, 6 * mm).translate(0, 0.0012, 0);
  const pocket = block(width - 0.006, 0.0022, depth * 0.36, 0.8 * mm, 4 * mm).translate(
    0,
    0.0036,
    depth * 0.31,
  );
  const seams = Array.from({ length: 12 }, (_, i) =>
    painted(
      block(0.0014, 0.0006, depth * 0.35, 0).translate(
        -width / 2 + (width * (i + 0.5)) / 12,
        0.005,
        depth * 0.31,
      ),
      'leather',
    ),
  );
  const hem = [-1, 1].map((s) =>
    painted(block(width, 0.0012, 0.008, 0.3 * mm).translate(0, 0.0029, s * (depth / 2 - 0.006)), 'leather'),
  );
  const canvas = [base, pocket].map((g) => {
    const uv = g.getAttribute('uv');
    const p = g.getAttribute('position');
    for (let i = 0; i < uv.count; i++) uv.setXY(i, p.getX(i), p.getZ(i));
    return painted(g, 'canvas');
  });
  return joined([...canvas, ...seams, ...hem]);
}
