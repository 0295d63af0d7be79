import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { block, extrude, hole, outline, rectangle, rise } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { strap } from '../form/strap.ts';
import { bentTube, type Spot, slackTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** Plug with its cable; the pins point to -z, the cable runs through `way` (relative to the plug's back). */
export function plugForm(way: readonly Spot[]): BufferGeometry {
  const body = revolve(
    [
      [0, 0],
      [0.019, 0],
      [0.0195, 0.012, 0],
      [0.016, 0.026, 0],
      [0.0085, 0.038, 0],
      [0.006, 0.05],
      [0, 0.05],
    ],
    { segments: 16, chamfer: 1 * mm },
  ).rotateX(Math.PI / 2);
  const pin = (x: number): BufferGeometry =>
    painted(
      revolve(
        [
          [0, -0.018],
          [2.4 * mm, -0.018],
          [2.4 * mm, 0],
          [0, 0],
        ],
        { segments: 8 },
      )
        .rotateX(Math.PI / 2)
        .translate(x, 0, 0),
      'brass',
    );
  const cable = painted(slackTube([[0, 0, 0.04], ...way], 0.0085, 28, 6), 'rubber');
  return joined([painted(body, 'bakelite'), pin(0.0095), pin(-0.0095), cable]);
}

/** Hand extinguisher standing up. */
export function extinguisherForm(): BufferGeometry {
  const bottle = revolve(
    [
      [0, 0],
      [0.042, 0, 3 * mm],
      [0.042, 0.19, 0],
      [0.034, 0.215, 0],
      [0.016, 0.228, 0],
      [0.012, 0.24],
      [0, 0.24],
    ],
    { segments: 20, chamfer: 1 * mm },
  );
  const label = revolve(
    [
      [0.041, 0.06],
      [0.0424, 0.06],
      [0.0424, 0.14],
      [0.041, 0.14],
    ],
    { segments: 20, chamfer: 0 },
  );
  const lever = block(0.012, 0.006, 0.07, 1 * mm)
    .rotateX(0.16)
    .translate(0, 0.262, 0.02);
  const lower = block(0.012, 0.005, 0.055, 1 * mm).translate(0, 0.244, 0.02);
  const head = block(0.018, 0.03, 0.02, 1.5 * mm).translate(0, 0.25, -0.004);
  const hose = bentTube(
    [
      [0, 0.252, -0.012],
      [0, 0.24, -0.05],
      [0.012, 0.12, -0.052],
      [0.012, 0.075, -0.047],
    ],
    0.011,
    0.02,
    20,
    10,
  );
  return joined([
    painted(bottle, 'signRed'),
    painted(label, 'cream'),
    painted(lever, 'black'),
    painted(lower, 'black'),
    painted(head, 'zinc'),
    painted(hose, 'rubber'),
  ]);
}

/** Half the width of the safety glasses, m. */
const WIDE = 0.067;

/** Frame of safety glasses laid down on their folded arms, front up: rims, bridge, side shields' hinges, arms. */
export function glassesForm(): BufferGeometry {
  const rim = (s: number): BufferGeometry => {
    const shape = outline(rectangle(0.062, 0.042), 14 * mm);
    shape.holes.push(hole(rectangle(0.054, 0.034).reverse(), 11 * mm));
    return leant(extrude(shape, 4 * mm, 0.9 * mm, 4).translate(0, 0, -2 * mm), s);
  };
  const bridge = bentTube(
    [
      [-0.008, 0.029, 0.001],
      [0, 0.034, 0.003],
      [0.008, 0.029, 0.001],
    ],
    0.005,
    0.006,
    10,
    8,
  );
  // Folded behind the front, one over the other, each reaching across to the far rim with its hook down.
  const arm = (s: number): BufferGeometry =>
    strap(
      [
        [0.062, 0.031],
        [-0.03, 0.031],
        [-0.052, 0.024],
        [-0.066, 0.004],
      ],
      0.007,
      0.003,
      0.012,
    )
      .rotateY(Math.PI / 2)
      .scale(s, 1, 1)
      .translate(0, 0, s > 0 ? -0.0105 : -0.0145);
  const hinge = (s: number): BufferGeometry =>
    block(0.006, 0.01, 0.013, 1 * mm).translate(s * (WIDE - 0.0035), 0.031, -0.0105);
  return joined(
    [rim(1), rim(-1), bridge, arm(1), mirrored(arm(-1)), hinge(1), hinge(-1)].map((g) =>
      painted(laid(g), 'black'),
    ),
  );
}

/** Their two lenses, to be seen through. */
export function lensForm(): BufferGeometry {
  const lens = (s: number): BufferGeometry =>
    leant(extrude(outline(rectangle(0.055, 0.035), 11.4 * mm), 1.6 * mm, 0, 4).translate(0, 0, -0.8 * mm), s);
  return joined([lens(1), lens(-1)].map((g) => painted(laid(g), 'trayEnamel')));
}

/** Lays the glasses on their arms. */
function laid(g: BufferGeometry): BufferGeometry {
  return g.rotateX(-1.45).translate(0, 0.0165, 0.012);
}

/** Turns the faces of a mirrored form outwards again. */
function mirrored(g: BufferGeometry): BufferGeometry {
  const index = g.getIndex();
  for (let i = 0; index !== null && i < index.count; i += 3) {
    const a = index.getX(i);
    index.setX(i, index.getX(i + 1));
    index.setX(i + 1, a);
  }
  return g;
}

/** One half of the glasses' front, wrapped a little round the face. */
function leant(g: BufferGeometry, s: number): BufferGeometry {
  return g.rotateY(s * 0.2).translate(s * 0.0345, 0.0212, -0.004);
}

/** Ear defenders lying on the bench. */
export function defendersForm(): BufferGeometry {
  const cup = (s: number): BufferGeometry[] => {
    const shell = revolve(
      [
        [0, 0],
        [0.034, 0],
        [0.034, 0.012, 0],
        [0.022, 0.026, 0],
        [0, 0.03, 0],
      ],
      { segments: 16 },
    );
    const pad = revolve(
      [
        [0.014, -0.012],
        [0.036, -0.012],
        [0.036, 0],
        [0.014, 0],
      ],
      { segments: 16, chamfer: 4 * mm },
    );
    const lay = (g: BufferGeometry): BufferGeometry =>
      g.rotateZ(-s * (Math.PI / 2)).translate(s * 0.058, 0.036, 0);
    return [painted(lay(shell), 'trayRim'), painted(lay(pad), 'black')];
  };
  const band = bentTube(
    [
      [-0.078, 0.036, -0.004],
      [-0.074, 0.03, -0.09],
      [0, 0.026, -0.14],
      [0.074, 0.03, -0.09],
      [0.078, 0.036, -0.004],
    ],
    0.008,
    0.07,
    26,
    6,
  );
  return joined([...cup(1), ...cup(-1), painted(band, 'black')]);
}

/** Flat tin that catches what runs out under the work. */
export function dripTrayForm(): BufferGeometry {
  const floor = rise(outline(rectangle(0.2, 0.13), 0.012), 0.0015, 0.3 * mm);
  const wall = (w: number, x: number, z: number, turn: number): BufferGeometry =>
    painted(
      block(w, 0.016, 0.0016, 0.4 * mm)
        .rotateY(turn)
        .translate(x, 0.008, z),
      'zinc',
    );
  return joined([
    painted(floor, 'zinc'),
    wall(0.2, 0, 0.065, 0),
    wall(0.2, 0, -0.065, 0),
    wall(0.13, 0.1, 0, Math.PI / 2),
    wall(0.13, -0.1, 0, Math.PI / 2),
  ]);
}

/** A pool of fuel, one metre in radius, to be scaled. */
export function poolForm(): BufferGeometry {
  const rim = Array.from({ length: 40 }, (_, i) => {
    const a = (i / 40) * Math.PI * 2;
    const r = 1 + 0.16 * Math.sin(a * 3 + 1) + 0.09 * Math.sin(a * 5);
    return [r * Math.cos(a), r * Math.sin(a)] as const;
  });
  return painted(rise(outline(rim), 0.0006, 0), 'fuel');
}

/** A drop hanging from a joint. */
export function dropForm(): BufferGeometry {
  const drop = revolve(
    [
      [0, -0.0062],
      [0.0018, -0.0056, 0],
      [0.0026, -0.0042, 0],
      [0.0021, -0.0024, 0],
      [0.0008, -0.0006, 0],
      [0, 0, 0],
    ],
    { segments: 8, chamfer: 0 },
  );
  return painted(drop, 'fuel');
}

/** A bubble. */
export function bubbleForm(): BufferGeometry {
  const points = Array.from({ length: 9 }, (_, i) => {
    const a = -Math.PI / 2 + (i / 8) * Math.PI;
    return [0.0017 * Math.cos(a), 0.0017 * Math.sin(a), 0] as const;
  });
  return painted(revolve(points, { segments: 8, chamfer: 0 }), 'white');
}
