import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, hexagon, outline, rise } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { type SidePoint, strap } from '../form/strap.ts';
import { bentTube, type Spot } from '../form/tube.ts';
import { painted } from '../look/paints.ts';
import { TANK_Z } from './fuel.ts';

const HOOP = 0.306;
const BAR = 0.018;
/** Bearers under the tank, z. */
const FRONT = 0.044;
const REAR = -0.088;

/** What carries the tank: a hoop on the frame at the right, two struts on the head at the left, and bearers. */
export function tankStand(def: SetDefinition): BufferGeometry[] {
  const t = dimsOf(def, 'tank');
  const under = t('bottom') - 0.006;
  const left = 0.05;
  const bearers = [FRONT, REAR].map((z) =>
    painted(
      block(HOOP + 0.008 - left, 0.006, 0.02, 0.8 * mm).translate(
        (HOOP + 0.008 + left) / 2,
        under + 0.003,
        z,
      ),
      'black',
    ),
  );
  return [...hoop(def, under), ...bearers, ...struts(def, under)];
}

/** The two straps that hold the tank down; they go with it. */
export function tankStraps(def: SetDefinition): BufferGeometry[] {
  return [0.086, 0.262].flatMap((x) => tankStrap(def, x));
}

/** Bent tube from rail to rail over the generator, on foot plates with two bolts each. */
function hoop(def: SetDefinition, under: number): BufferGeometry[] {
  const f = dimsOf(def, 'frame');
  const z = f('width') / 2 - 0.02;
  const foot = f('rail');
  const tube = bentTube(
    [
      [HOOP, foot, z],
      [HOOP, under - BAR / 2 - 0.003, z],
      [HOOP, under - BAR / 2 - 0.003, -z],
      [HOOP, foot, -z],
    ],
    BAR,
    0.05,
    30,
    10,
  );
  const feet = [-z, z].flatMap((at) => [
    painted(block(0.075, 0.005, 0.036, 0.8 * mm, 6 * mm).translate(HOOP, foot + 0.0025, at), 'black'),
    ...[-0.027, 0.027].map((dx) =>
      painted(rise(outline(hexagon(0.01)), 0.006, 0.6 * mm).translate(HOOP + dx, foot + 0.005, at), 'zinc'),
    ),
  ]);
  const pads = [FRONT, REAR].map((at) =>
    painted(block(0.022, 0.004, 0.026, 0.6 * mm).translate(HOOP, under - 0.002, at), 'rubber'),
  );
  return [painted(tube, 'black'), ...feet, ...pads];
}

/** Bent flat bars under the right-hand head nuts, each with a rubber bush below its bearer. */
function struts(def: SetDefinition, under: number): BufferGeometry[] {
  const c = dimsOf(def, 'cylinder');
  const foot = c('headTop') - 0.0135;
  const bush = 0.011;
  const middle = -c('back');
  return [1, -1].flatMap((s) => {
    const bearer = s > 0 ? FRONT : REAR;
    const nut = middle + s * 0.056;
    const up = bearer + s * 0.012;
    const side = (points: readonly SidePoint[]): BufferGeometry =>
      strap(points, 0.003, 0.018, 0.004).translate(0.058, 0, 0);
    const bar = side([
      [nut - s * 0.01, foot],
      [up, foot],
      [up, under - bush - 0.0015],
      [bearer - s * 0.009, under - bush - 0.0015],
    ]);
    const rubber = revolve(
      [
        [0, under - bush],
        [0.0095, under - bush],
        [0.0078, under - bush / 2, 0],
        [0.0095, under],
        [0, under],
      ],
      { segments: 18 },
    ).translate(0.058, 0, bearer);
    return [painted(bar, 'black'), painted(rubber, 'rubber')];
  });
}

/** Sheet strap round tank and bearers, drawn tight by a screw at the front. */
function tankStrap(def: SetDefinition, x: number): BufferGeometry[] {
  const t = dimsOf(def, 'tank');
  const low = t('bottom') - 0.0075;
  const high = t('bottom') + t('height') + 0.0006;
  const middle = t('bottom') + t('height') / 2;
  const front = TANK_Z + t('depth') / 2 + 0.0008;
  const back = TANK_Z - t('depth') / 2 - 0.0008;
  const bow = 0.0072;
  const line: SidePoint[] = [
    [FRONT - 0.004, low],
    [front - 0.01, low + 0.002],
    [front, low + 0.014],
    [front, middle - 0.007],
    [front + bow, middle - 0.003],
    [front + bow, middle + 0.003],
    [front, middle + 0.007],
    [front, high - 0.011],
    [front - 0.009, high],
    [back + 0.009, high],
    [back, high - 0.011],
    [back, middle + 0.008],
    [back - bow, middle],
    [back, middle - 0.008],
    [back, low + 0.012],
    [back + 0.012, low],
  ];
  const band = strap(line, 0.0013, 0.012, 0.006).translate(x, 0, 0);
  const at: Spot = [x, low + 0.024, front + 0.004];
  const barrel = revolve(ring(0, 0.004, -0.01, 0.01), { segments: 12 })
    .rotateZ(Math.PI / 2)
    .translate(...at);
  const screw = revolve(ring(0, 0.002, -0.012, 0.014), { segments: 8 }).translate(...at);
  return [painted(band, 'darkSteel'), painted(barrel, 'zinc'), painted(screw, 'plainSteel')];
}
