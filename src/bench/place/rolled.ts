import type { BufferGeometry } from 'three';
import { blot } from '../engine/grime.ts';
import { mm } from '../form/dims.ts';
import { block, extrude, type Flat, hole, outline, rectangle, rise } from '../form/extrude.ts';
import { word } from '../form/marks.ts';
import { type Corner, ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { strap } from '../form/strap.ts';
import { bentTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';
import { lay } from './tools.ts';

/** Flat screwdriver: ground blade, long rod, ferrule, turned handle. */
export function screwdriverForm(): BufferGeometry {
  const blade = block(0.0082, 0.0014, 0.02, 0.3 * mm).translate(0, 0.013, -0.006);
  const rod = lay(ring(0, 0.0032, 0, 0.15), 'plainSteel', 0.013, 14);
  const handle = lay(
    [
      [0, 0.145],
      [0.006, 0.145],
      [0.0092, 0.15, 0],
      [0.0088, 0.16, 0],
      [0.0132, 0.174, 0],
      [0.0136, 0.224, 0],
      [0.0108, 0.25, 2 * mm],
      [0, 0.253],
    ],
    'ash',
    0.0136,
    18,
  );
  const collar = lay(ring(0, 0.0066, 0.138, 0.152), 'brass', 0.0136, 18);
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

/** Small pry bar: round stock, one end hooked up and flattened to a claw, the other drawn out to a chisel. */
export function leverBarForm(): BufferGeometry {
  const bar = bentTube(
    [
      [0, 0.0062, 0.222],
      [0, 0.0062, 0.006],
      [0, 0.0085, -0.012],
      [0, 0.026, -0.028],
    ],
    0.0115,
    0.02,
    22,
    8,
  );
  const claw = outline(
    [
      [-0.0055, 0],
      [0.0055, 0],
      [0.0095, 0.016],
      [0.0085, 0.028],
      [0.0022, 0.028],
      [0, 0.014, 1.5 * mm],
      [-0.0022, 0.028],
      [-0.0085, 0.028],
      [-0.0095, 0.016],
    ],
    1 * mm,
  );
  const hook = extrude(claw, 0.0042, 0.8 * mm)
    .translate(0, 0, -0.002)
    .rotateX(-0.72)
    .translate(0, 0.0235, -0.0255);
  const chisel = rise(
    outline(
      [
        [-0.0055, 0],
        [-0.0085, -0.034],
        [0.0085, -0.034],
        [0.0055, 0],
      ],
      1 * mm,
    ),
    0.0034,
    0.8 * mm,
  ).translate(0, 0.0045, 0.217);
  return joined([painted(bar, 'trayRim'), painted(hook, 'plainSteel'), painted(chisel, 'plainSteel')]);
}

/** Swab: a thin wooden stick with a long bud of lint-free cotton wound round its end. */
export function swabForm(): BufferGeometry {
  const stick = lay(ring(0, 0.0017, -0.01, 0.17), 'ash', 0.0068, 8);
  // Wound on: a long bud, a little wavy, drawn in where the winding ends.
  const bud: Corner[] = Array.from({ length: 11 }, (_, i): Corner => {
    const t = i / 10;
    const r = 0.0066 * Math.sin(Math.PI * (0.1 + 0.86 * t)) ** 0.55 + (i % 2) * 0.0003;
    return [r, -0.04 + t * 0.046, 0];
  });
  const tip = lay([[0, -0.0415], ...bud, [0.0017, 0.0085, 0], [0, 0.0085]], 'white', 0.0068, 16, 0);
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

/** A piece of a cardboard box, to be held where a leak is looked for: fluted at its edges, oily where it was used. */
export function cardForm(): BufferGeometry {
  const [wide, deep, thick] = [0.11, 0.082, 0.0046];
  const liner = (y: number): BufferGeometry => block(wide, 0.0006, deep, 0).translate(0, y, 0);
  const steps = 44;
  const wave = (i: number, up: number): Flat => [
    (i / steps - 0.5) * wide,
    thick / 2 + (i % 2 === 0 ? -1 : 1) * (thick / 2 - 0.0008) + up,
  ];
  const all = Array.from({ length: steps + 1 }, (_, i) => i);
  const core = extrude(
    outline([...all.map((i) => wave(i, -0.0003)), ...all.map((i) => wave(steps - i, 0.0003))]),
    deep - 0.0006,
    0,
  ).translate(0, 0, -(deep - 0.0006) / 2);
  const written = word('LEAKS', 0.013, 0.11).map((g) =>
    painted(g.rotateX(-Math.PI / 2).translate(-0.014, thick + 0.0002, -0.022), 'dark'),
  );
  return joined([
    painted(liner(0.0003), 'card', 0.8),
    painted(liner(thick - 0.0003), 'card', 0.8),
    painted(core, 'card', 0.55),
    ...written,
    blot('card', 0.03, 0.024, 1.3, 0.62)
      .rotateX(-Math.PI / 2)
      .translate(0.026, thick + 0.0002, 0.014),
  ]);
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

/** Where the loops of the tool roll stand: middle and half width of what each holds, and its height, m. */
type Loop = readonly [x: number, half: number, height: number];

/** Canvas roll laid open: a hemmed sheet with a loop over every tool's handle, and its strap with the buckle. */
export function toolRollForm(width: number, depth: number, loops: readonly Loop[]): BufferGeometry {
  const base = block(width, 0.0024, depth, 0.8 * mm, 6 * mm).translate(0, 0.0012, 0);
  const band = block(width - 0.012, 0.0014, 0.03, 0.4 * mm, 2 * mm).translate(0, 0.0031, LOOPS_AT);
  const hem = [-1, 1].map((s) =>
    painted(block(width, 0.0012, 0.008, 0.3 * mm).translate(0, 0.0029, s * (depth / 2 - 0.006)), 'leather'),
  );
  const arches = loops.map(([x, half, height]) => {
    const w = half + 0.004;
    const arch = strap(
      [
        [-w - 0.008, 0.0042],
        [-w, 0.0048],
        [-w * 0.72, height + 0.0052],
        [w * 0.72, height + 0.0052],
        [w, 0.0048],
        [w + 0.008, 0.0042],
      ],
      0.0014,
      0.024,
      0.006,
    );
    return painted(arch.rotateY(Math.PI / 2).translate(x, 0, LOOPS_AT), 'canvas', 0.72);
  });
  const tie = block(0.15, 0.0018, 0.02, 0.4 * mm, 4 * mm).translate(-width / 2 - 0.06, 0.0012, 0.02);
  const frame = outline(rectangle(0.02, 0.03), 3 * mm);
  frame.holes.push(hole(rectangle(0.013, 0.022).reverse(), 2 * mm));
  const buckle = rise(frame, 0.0026, 0.6 * mm, 4).translate(-width / 2 - 0.125, 0.0008, 0.02);
  const canvas = [base, band].map((g, i) => {
    const uv = g.getAttribute('uv');
    const p = g.getAttribute('position');
    for (let k = 0; k < uv.count; k++) uv.setXY(k, p.getX(k), p.getZ(k));
    return painted(g, 'canvas', i === 0 ? 1 : 0.75);
  });
  return joined([...canvas, ...arches, ...hem, painted(tie, 'leather'), painted(buckle, 'brass')]);
}

/** How far before the roll's middle its loops run, m. */
const LOOPS_AT = 0.045;
