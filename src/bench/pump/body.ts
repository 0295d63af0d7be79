import type { BufferGeometry, Shape } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { extrude, type Flat, hexagon, hole, outline, rectangle, rise } from '../form/extrude.ts';
import type { PartForm } from '../form/part.ts';
import type { Corner } from '../form/profile.ts';
import { capsOf, revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';
import { BACK, cutFace, type Hatch } from './turned.ts';
import { windowBoss } from './window.ts';

const HATCH: Hatch = { angle: Math.PI / 4, spacing: 1.5 * mm };

/** The pump's body: pilot, flange with slots, bell with its window and the fork's channel, upper cylinder, thread. */
export function bodyForm(d: Dims, inlet: Dims): PartForm {
  const gap = Math.asin(d('windowWidth') / 2 / d('bellRadius'));
  const whole = joined([
    painted(revolve(lowerSide(d), { from: gap, length: 2 * Math.PI - 2 * gap, segments: 56 }), 'castIron'),
    painted(revolve(upperSide(d), { segments: 56 }), 'castIron'),
    ...mouths(d),
    painted(
      rise(flangeShape(d, false), d('flangeThickness'), 0.7 * mm, 10).translate(0, d('flangeFromCamEnd'), 0),
      'castIron',
    ),
    ...windowBoss(d),
    ...inletUnion(d, inlet),
  ]);
  const half = joined([
    painted(revolve(lowerSide(d), { ...BACK, segments: 56 }), 'castIron'),
    painted(revolve(upperSide(d), { ...BACK, segments: 56 }), 'castIron'),
    ...mouths(d, true),
    painted(
      rise(flangeShape(d, true), d('flangeThickness'), 0, 10).translate(0, d('flangeFromCamEnd'), 0),
      'castIron',
    ),
    ...inletUnion(d, inlet),
  ]);
  const cut = joined([
    cutFace(capsOf(lowerSide(d)), HATCH),
    cutFace(capsOf(upperSide(d)), HATCH),
    ...flangeCuts(d),
  ]);
  return { whole, half, cut };
}

function lowerSide(d: Dims): Corner[] {
  return [
    [d('bore'), 0],
    [d('pilotRadius'), 0],
    [d('pilotRadius'), d('flangeFromCamEnd')],
    [d('bellRadius'), d('flangeFromCamEnd')],
    [d('bellRadius'), d('springBoreFrom')],
    [d('bore'), d('springBoreFrom'), 0],
    [d('bore'), 0.0021],
    [0.0164, 0.0021, 0],
    [0.0164, 0.0005, 0],
    [d('bore'), 0.0005, 0],
  ];
}

function upperSide(d: Dims): Corner[] {
  const top = d('length');
  return [
    [d('bellRadius'), d('springBoreFrom'), 0],
    [d('bellRadius'), d('bellTop'), 1.2 * mm],
    [d('upperRadius'), d('bellTop') + 2.2 * mm, 0],
    [d('upperRadius'), top - 1 * mm, 0],
    [d('upperRadius') - 1 * mm, top, 0],
    [d('threadRadius') + 0.7 * mm, top, 0],
    [d('threadRadius') - 0.4 * mm, top - 1.1 * mm, 0],
    [d('threadRadius') - 0.4 * mm, d('threadFrom'), 0],
    [d('barrelBore'), d('threadFrom'), 0],
    [d('barrelBore'), d('galleryTo'), 0],
    [d('galleryRadius'), d('galleryTo') - 0.6 * mm, 0],
    [d('galleryRadius'), d('galleryFrom') + 0.6 * mm, 0],
    [d('barrelBore'), d('galleryFrom'), 0],
    [d('barrelBore'), d('ledgeTo'), 0],
    [d('ledgeBore'), d('ledgeTo'), 0],
    [d('ledgeBore'), d('ledgeFrom'), 0],
    [d('springBore'), d('ledgeFrom'), 0],
    [d('springBore'), d('springBoreFrom'), 0],
  ];
}

/** Machined rims at both ends: faces that were cut bright on a dark casting. */
function mouths(d: Dims, half = false): BufferGeometry[] {
  const span = half ? BACK : {};
  const top = d('length');
  const face: Corner[] = [
    [d('threadRadius') + 0.9 * mm, top - 0.05 * mm, 0],
    [d('upperRadius') - 1 * mm, top - 0.05 * mm, 0],
    [d('upperRadius') - 1 * mm, top + 0.03 * mm, 0],
    [d('threadRadius') + 0.9 * mm, top + 0.03 * mm, 0],
  ];
  const gap = half ? 0 : Math.asin(d('windowWidth') / 2 / d('bellRadius'));
  const pilot: Corner[] = [
    [d('bore') + 0.25 * mm, -0.03 * mm, 0],
    [d('pilotRadius') - 0.25 * mm, -0.03 * mm, 0],
    [d('pilotRadius') + 0.03 * mm, 0.3 * mm, 0],
    [d('pilotRadius') + 0.03 * mm, d('flangeFromCamEnd'), 0],
    [d('bore') + 0.25 * mm, d('flangeFromCamEnd'), 0],
  ];
  const around = half ? BACK : { from: gap, length: 2 * Math.PI - 2 * gap };
  return [
    painted(revolve(face, { ...span, chamfer: 0, segments: 56 }), 'machinedIron'),
    painted(revolve(pilot, { ...around, chamfer: 0, segments: 56 }), 'machinedIron'),
  ];
}

/** Flange outline in x, -z with bore, channel and stud slots; the back half only for the section. */
function flangeShape(d: Dims, back: boolean): Shape {
  const w = d('flangeWidth') / 2;
  const z = d('flangeDepth') / 2;
  const f = d('flangeFront');
  const r = d('bore');
  const c = d('windowWidth') / 2;
  const points = back
    ? ([
        [-w, 0, 0],
        [-r, 0, 0],
        ...archOf(r),
        [r, 0, 0],
        [w, 0, 0],
        [w, 0.009],
        [0.017, z],
        [-0.017, z],
        [-w, 0.009],
      ] as const)
    : ([
        [-w, -0.009],
        [-0.0155, -f, 0.003],
        [0.0155, -f, 0.003],
        [w, -0.009],
        [w, 0.009],
        [0.017, z],
        [-0.017, z],
        [-w, 0.009],
      ] as const);
  const shape = outline(points, 0.008);
  if (!back) {
    const bore: Flat[] = Array.from({ length: 33 }, (_, i) => {
      const from = -Math.PI / 2 + Math.asin(c / r);
      const a = from + ((2 * Math.PI - 2 * Math.asin(c / r)) * i) / 32;
      return [r * Math.cos(a), r * Math.sin(a)];
    });
    const lip: Flat[] = [
      [-c, -d('channelDepth')],
      [c, -d('channelDepth')],
    ];
    shape.holes.push(hole([...lip, ...bore].reverse(), 0));
  }
  for (const side of [-1, 1]) {
    const slot = rectangle(d('slotWidth'), d('slotLength'), (side * d('studSpacing')) / 2, 0);
    if (!back) shape.holes.push(hole([...slot].reverse(), d('slotWidth') * 0.49));
  }
  return shape;
}

function archOf(r: number): (readonly [number, number, number])[] {
  return Array.from({ length: 19 }, (_, i) => {
    const a = Math.PI - (Math.PI * (i + 0.5)) / 19;
    return [r * Math.cos(a), r * Math.sin(a), 0] as const;
  });
}

function flangeCuts(d: Dims): BufferGeometry[] {
  const from = d('flangeFromCamEnd');
  const half = d('studSpacing') / 2;
  const slot = d('slotWidth') / 2;
  const spans: [number, number][] = [
    [d('bellRadius'), half - slot],
    [half + slot, d('flangeWidth') / 2],
  ];
  return spans.flatMap(([a, b]) =>
    [1, -1].map((side) => {
      const width = b - a;
      const face = extrude(outline(rectangle(width, d('flangeThickness'))), 0.02 * mm, 0);
      return cutFace(face.translate((side * (a + b)) / 2, from + d('flangeThickness') / 2, 0), HATCH);
    }),
  );
}

/** Union for the fuel hose on the right: boss, hexagon, barbed tail. */
function inletUnion(d: Dims, inlet: Dims): BufferGeometry[] {
  const start = d('upperRadius') - 1.5 * mm;
  const r = inlet('radius');
  const tail = inlet('hoseBore');
  const length = inlet('length');
  const barbs = [0, 1, 2].flatMap((i) => {
    const x = 13 * mm + i * 3.6 * mm;
    return [
      [tail + 0.7 * mm, x, 0],
      [tail, x + 3 * mm, 0],
    ] as const;
  });
  const boss = revolve(
    [
      [0, -1 * mm],
      [r + 3 * mm, -1 * mm],
      [r + 2.4 * mm, 4 * mm],
      [0, 4 * mm],
    ],
    { segments: 24 },
  );
  const spigot = revolve(
    [
      [0, 3 * mm, 0],
      [r, 3 * mm, 0],
      [r, 11 * mm],
      [tail, 12 * mm, 0],
      ...barbs,
      [tail - 0.6 * mm, length, 0],
      [1.6 * mm, length, 0],
      [1.6 * mm, 6 * mm, 0],
      [0, 6 * mm, 0],
    ],
    { segments: 20 },
  );
  const hex = rise(outline(hexagon(inlet('hexAcross'))), 5 * mm, 0.6 * mm).translate(0, 4.6 * mm, 0);
  const lay = (g: BufferGeometry): BufferGeometry =>
    g.rotateZ(-Math.PI / 2).translate(start, d('inletHeight'), 0);
  return [painted(lay(boss), 'castIron'), painted(lay(spigot), 'brass'), painted(lay(hex), 'brass')];
}
