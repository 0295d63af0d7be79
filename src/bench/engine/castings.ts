import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, type Flat, hexagon, outline, rectangle, rise } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { type Spot, slackTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';
import { creep, run } from './grime.ts';

/** Turns an extrusion drawn in (z, y) so that its depth runs along x, centred. */
export function alongX(
  points: readonly Flat[],
  length: number,
  corner: number,
  bevel = 1.2 * mm,
): BufferGeometry {
  // Drawn with -z as the first coordinate so that the outline keeps its sense.
  const shape = outline(
    points.map(([z, y, r]) => (r === undefined ? [-z, y] : [-z, y, r]) as Flat).reverse(),
    corner,
  );
  return extrude(shape, length, bevel, 6)
    .rotateY(Math.PI / 2)
    .translate(-length / 2, 0, 0);
}

/** Crankcase behind the cam chamber, cylinder with its fins, head, rocker cover and side covers. */
export function castingsForm(def: SetDefinition): BufferGeometry {
  const c = dimsOf(def, 'crankcase');
  const deck = dimsOf(def, 'deck');
  const half = c('halfLength');
  const front = deck('boxBack');
  const crankcase = alongX(
    [
      [-0.098, 0.04, 0.02],
      [front, 0.04],
      [front, c('top'), 0.01],
      [-0.062, c('top'), 0.01],
      [-0.098, 0.22, 0.03],
    ],
    2 * half,
    0.01,
  );
  const foot = alongX(
    [
      [-0.105, 0.03],
      [deck('boxFront') - 0.004, 0.03],
      [deck('boxFront') - 0.004, 0.052],
      [-0.105, 0.052],
    ],
    2 * half + 0.012,
    0.004,
  );
  const sump = alongX(
    [
      [front - 0.002, 0.04],
      [deck('boxFront') - 0.012, 0.04],
      [deck('boxFront') - 0.012, 0.075],
      [front - 0.002, 0.075],
    ],
    2 * half - 0.004,
    0.004,
  );
  return joined([
    painted(crankcase, 'sage'),
    painted(foot, 'sage'),
    painted(sump, 'sage'),
    ...cylinder(def),
    ...drainAndDipstick(def),
    creep('sage', [0.004, c('top'), -dimsOf(def, 'cylinder')('back') + 0.012], 0.17, 0.14, 0.55),
    run('sage', [-half + 0.035, 0.053, deck('boxFront') - 0.004], 0.009, 0.02, 0.5),
  ]);
}

function cylinder(def: SetDefinition): BufferGeometry[] {
  const c = dimsOf(def, 'cylinder');
  const base = dimsOf(def, 'crankcase')('top');
  const z = -c('back');
  const fins = c('fins');
  const r = c('finRadius');
  const pitch = (c('top') - base) / fins;
  const barrel = revolve(
    [
      [0, base],
      [0.047, base],
      [0.047, c('top')],
      [0, c('top')],
    ],
    { segments: 26 },
  ).translate(0, 0, z);
  const fin = (y: number, size: number, thick: number): BufferGeometry =>
    rise(outline(rectangle(2 * size, 2 * size), size * 0.45), thick, 0.5 * mm, 3).translate(0, y, z);
  const barrelFins = Array.from({ length: fins }, (_, i) =>
    painted(fin(base + pitch * (i + 0.35), r, c('finThickness')), 'castIron'),
  );
  const headCore = rise(outline(rectangle(0.108, 0.112), 0.02), c('headTop') - c('top'), 1 * mm, 5).translate(
    0,
    c('top'),
    z,
  );
  const headFins = Array.from({ length: 5 }, (_, i) =>
    painted(fin(c('top') + 0.003 + i * 0.0115, r + 0.002, 0.0026), 'castAluminium'),
  );
  const gasket = rise(outline(rectangle(0.118, 0.118), 0.03), 0.0016, 0).translate(0, c('top') - 0.0008, z);
  const rocker = rise(
    outline(rectangle(0.116, 0.096), 0.018),
    c('rockerTop') - c('headTop') - 0.002,
    5 * mm,
    6,
  ).translate(0, c('headTop') + 0.002, z);
  const lip = rise(outline(rectangle(0.124, 0.104), 0.018), 0.006, 1 * mm, 6).translate(
    0,
    c('headTop') - 0.001,
    z,
  );
  const capNuts = [-0.036, 0.036].map((x) =>
    painted(domeNut().translate(x, c('rockerTop') - 0.001, z), 'zinc'),
  );
  return [
    painted(barrel, 'castIron', 0.7),
    ...barrelFins,
    painted(headCore, 'castAluminium'),
    ...headFins,
    painted(gasket, 'copper', 0.7),
    painted(rocker, 'sage'),
    painted(lip, 'castAluminium'),
    ...capNuts,
  ];
}

function domeNut(): BufferGeometry {
  return revolve(
    [
      [0, 0],
      [0.0075, 0],
      [0.0075, 0.004, 0],
      [0.0055, 0.009, 0],
      [0.003, 0.0108, 0],
      [0, 0.0113, 0],
    ],
    { segments: 18, chamfer: 0.4 * mm },
  );
}

/** Drain plug, filler plug on the crankcase behind the pump, dipstick with its ring on the deck. */
function drainAndDipstick(def: SetDefinition): BufferGeometry[] {
  const half = dimsOf(def, 'crankcase')('halfLength');
  const deck = dimsOf(def, 'deck');
  const drain = extrude(outline(hexagon(0.017)), 0.008, 0.8 * mm).translate(-half + 0.035, 0.06, 0.124);
  const tilt = (g: BufferGeometry): BufferGeometry =>
    g.rotateX(0.8).translate(half - 0.018, deck('height') + 0.03, deck('boxBack') - 0.004);
  const neck = revolve(ring(0, 0.0135, -0.004, 0.008), { segments: 24 });
  const plug = revolve(
    [
      [0, 0.008],
      [0.0125, 0.008],
      [0.0125, 0.0135, 1.4 * mm],
      [0, 0.0145],
    ],
    { segments: 24 },
  );
  const grip = block(0.021, 0.007, 0.005, 1 * mm, 2 * mm).translate(0, 0.0175, 0);
  const stick: Spot = [-0.015, deck('height'), deck('boxBack') + 0.009];
  const boss = revolve(ring(0, 0.0065, -0.001, 0.006), { segments: 18 }).translate(...stick);
  const stop = revolve(ring(0, 0.0045, 0.006, 0.0095), { segments: 14 }).translate(...stick);
  const loop = Array.from({ length: 13 }, (_, i): Spot => {
    const a = -Math.PI / 2 + (i / 12) * Math.PI * 2;
    return [stick[0] + 0.008 * Math.cos(a), stick[1] + 0.03 + 0.008 * Math.sin(a), stick[2]];
  });
  const wire = slackTube([[stick[0], stick[1] + 0.008, stick[2]], ...loop], 0.0022, 32, 5);
  return [
    painted(drain, 'zinc'),
    painted(tilt(neck), 'sage'),
    painted(tilt(plug), 'bakelite'),
    painted(tilt(grip), 'bakelite'),
    painted(boss, 'castIron'),
    painted(stop, 'bakelite'),
    painted(wire, 'zinc'),
  ];
}
