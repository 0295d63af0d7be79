import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, hole, outline, rectangle, roundHole } from '../form/extrude.ts';
import { strip, word } from '../form/marks.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import type { Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

const METER = { x: 46 * mm, y: 16 * mm, radius: 17 * mm } as const;
/** Angle of the needle from upright at no voltage and at full scale, rad. */
const SWEEP = 0.95;
const FULL_SCALE = 300;
const NOMINAL = 230;

/** Middle of the control box's face, engine coordinates, m. */
export function panelFace(def: SetDefinition): Spot {
  const d = dimsOf(def, 'generator');
  return [
    d('from') + d('length') * 0.5,
    dimsOf(def, 'crankcase')('crankHeight'),
    d('radius') + 0.012 + 0.027,
  ];
}

/** Control box: two sockets, voltmeter, breaker, an engraved plate, four screws. */
export function controlBox(def: SetDefinition): BufferGeometry[] {
  const [x, y, z] = panelFace(def);
  const box = block(0.15, 0.1, 0.05, 3 * mm, 8 * mm).translate(0, 0, -0.027);
  const face = block(0.138, 0.088, 0.003, 0.6 * mm, 5 * mm).translate(0, 0, -0.0015);
  const screws = [-1, 1].flatMap((sx) =>
    [-1, 1].map((sy) =>
      painted(
        revolve(ring(0, 2.6 * mm, 0, 1.4 * mm), { segments: 10, chamfer: 0 })
          .rotateX(Math.PI / 2)
          .translate(sx * 0.064, sy * 0.039, 0),
        'zinc',
      ),
    ),
  );
  return [
    painted(box, 'sageDark'),
    painted(face, 'cream'),
    ...screws,
    ...socket(-0.042),
    ...socket(0.006),
    ...meter(),
    ...breaker(),
    ...plate(),
  ].map((g) => g.translate(x, y, z));
}

function socket(x: number): BufferGeometry[] {
  const body = revolve(
    [
      [0, 0],
      [0.021, 0],
      [0.021, 0.006],
      [0.016, 0.007],
      [0.016, 0.002],
      [0, 0.002],
    ],
    { segments: 24, chamfer: 0.2 * mm },
  )
    .rotateX(Math.PI / 2)
    .translate(x, 0.012, 0);
  const holes = [
    [-0.0095, 0],
    [0.0095, 0],
  ].map(([dx = 0, dy = 0]) =>
    painted(
      revolve(ring(0, 0.0026, 0, 0.0004), { segments: 10, chamfer: 0 })
        .rotateX(Math.PI / 2)
        .translate(x + dx, 0.012 + dy, 0.0021),
      'dark',
    ),
  );
  const earth = [-1, 1].map((s) =>
    painted(block(0.005, 0.0022, 0.003, 0.2 * mm).translate(x, 0.012 + s * 0.0148, 0.0035), 'brass'),
  );
  return [painted(body, 'bakelite'), ...holes, ...earth];
}

/** The voltmeter without its needle: bezel, dial, marks from 0 to full scale, the nominal one longer. */
function meter(): BufferGeometry[] {
  const { x, y, radius: r } = METER;
  const frame = outline(rectangle(2 * r + 0.003, 2 * r + 0.001), 4 * mm);
  frame.holes.push(roundHole(0, 0, r - 1.6 * mm));
  const bezel = extrude(frame, 5 * mm, 0.8 * mm, 7);
  const dial = revolve(ring(0, r - 1 * mm, 0, 1 * mm), { segments: 30, chamfer: 0 }).rotateX(Math.PI / 2);
  const foot = -0.45 * r;
  const ticks = Array.from({ length: 7 }, (_, i) => {
    const volts = i * 50;
    const a = needleTurn(volts);
    const at = (k: number): readonly [number, number] => [-k * Math.sin(a), foot + k * Math.cos(a)];
    return strip([at(r * 1.02), at(r * 1.2)], 0.5 * mm).translate(0, 0, 1.15 * mm);
  });
  const a = needleTurn(NOMINAL);
  const at = (k: number): readonly [number, number] => [-k * Math.sin(a), foot + k * Math.cos(a)];
  const nominal = strip([at(r * 0.95), at(r * 1.22)], 0.9 * mm).translate(0, 0, 1.2 * mm);
  const letter = word('V', 4 * mm).map((g) => g.translate(0, -0.02 * r, 1.15 * mm));
  return [
    painted(bezel, 'bakelite'),
    painted(dial, 'white'),
    ...ticks.map((g) => painted(g, 'dark')),
    painted(nominal, 'signRed'),
    ...letter.map((g) => painted(g, 'dark')),
  ].map((g) => g.translate(x, y, 0));
}

/** Turn of the needle about z for a voltage, rad; 0 upright, positive to the left. */
export function needleTurn(volts: number): number {
  return SWEEP * (1 - (2 * Math.min(FULL_SCALE, Math.max(0, volts))) / FULL_SCALE);
}

/** Voltage that a self-excited generator of this kind gives at a share of its rated speed: in proportion. */
export function voltsAt(share: number): number {
  return NOMINAL * Math.max(0, share);
}

/** The needle, upright, its pivot at the origin, to be stood at `needleAt`. */
export function needleForm(): BufferGeometry {
  const r = METER.radius;
  return joined([
    painted(
      strip(
        [
          [0, -2 * mm],
          [0, r * 1.12],
        ],
        0.7 * mm,
      ),
      'dark',
    ),
    painted(
      strip(
        [
          [-1.6 * mm, 0],
          [1.6 * mm, 0],
        ],
        3.2 * mm,
      ),
      'dark',
    ),
  ]);
}

/** Pivot of the needle, engine coordinates, m. */
export function needleAt(def: SetDefinition): Spot {
  const [x, y, z] = panelFace(def);
  return [x + METER.x, y + METER.y - 0.45 * METER.radius, z + 1.7 * mm];
}

function breaker(): BufferGeometry[] {
  const frame = outline(rectangle(0.022, 0.022), 2 * mm);
  frame.holes.push(hole(rectangle(0.011, 0.015).reverse(), 1 * mm));
  const body = extrude(frame, 6 * mm, 0.8 * mm).translate(METER.x, -0.024, 0);
  const back = block(0.016, 0.018, 0.001, 0).translate(METER.x, -0.024, 0.0006);
  const toggle = block(0.008, 0.009, 0.012, 0.8 * mm)
    .rotateX(-0.35)
    .translate(METER.x, -0.0225, 0.005);
  const marks = [word('1', 4 * mm), word('0', 4 * mm)].flatMap((list, i) =>
    list.map((g) => painted(g.translate(METER.x + 0.0155, -0.018 - i * 0.012, 0.0003), 'dark')),
  );
  return [painted(body, 'bakelite'), painted(back, 'dark'), painted(toggle, 'cream'), ...marks];
}

function plate(): BufferGeometry[] {
  const sheet = block(0.082, 0.02, 0.0012, 0.2 * mm, 2 * mm).translate(-0.017, -0.027, 0.0006);
  const text = word('230 V', 6 * mm).map((g) => painted(g.translate(-0.017, -0.027, 0.00135), 'dark'));
  return [painted(sheet, 'machinedAluminium'), ...text];
}
