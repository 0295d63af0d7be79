import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, hexagon, outline, rise } from '../form/extrude.ts';
import { slot } from '../form/marks.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import type { Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

/** The cord leaves the housing at this angle above the level, rad; its spout stands out radially. */
export const CORD_RISE = 1.0;
const SPOUT = 0.024;
/** How far the band round the flywheel reaches, from the front upwards and over, rad. */
const BAND = { from: 0.5, length: 4.35 } as const;

/** Recoil starter: band round the flywheel with its guard rails, dished cover with slots, hub, spout for the cord. */
export function starterForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'starter');
  const y = dimsOf(def, 'crankcase')('crankHeight');
  const lay = (g: BufferGeometry): BufferGeometry => g.rotateZ(Math.PI / 2).translate(-d('from'), y, 0);
  return joined(
    [
      ...cover(d('coverRadius'), d('depth')),
      ...band(d('coverRadius')),
      ...spout(d('coverRadius'), d('depth')),
    ].map(lay),
  );
}

function cover(R: number, depth: number): BufferGeometry[] {
  const shell = revolve(
    [
      [0.03, depth],
      [0.058, depth, 0],
      [0.066, depth - 0.004, 0],
      [0.074, depth - 0.016, 0],
      [R - 0.03, depth - 0.024, 0],
      [R - 0.012, depth - 0.03, 0],
      [R, depth - 0.044, 0],
      [R, 0.034],
      [R - 0.002, 0.034],
      [R - 0.004, depth - 0.046, 0],
      [R - 0.03, depth - 0.028, 0],
      [0.03, depth - 0.02, 0],
    ],
    { chamfer: 0.8 * mm, segments: 40 },
  );
  const hub = revolve(
    [
      [0, depth],
      [0.03, depth],
      [0.03, depth + 0.003],
      [0.012, depth + 0.005, 0],
      [0, depth + 0.005, 0],
    ],
    { segments: 32 },
  );
  const slots = Array.from({ length: 12 }, (_, i) =>
    painted(
      slot(0.016, 0.04, 0.005)
        .rotateX(-Math.PI / 2 + 0.145)
        .translate(0, depth - 0.0204, 0.104)
        .rotateY((i / 12) * Math.PI * 2),
      'dark',
    ),
  );
  return [painted(shell, 'sage'), painted(hub, 'zinc'), ...slots];
}

/** The band is open at the front below, where the rim is seen and can be turned by hand between two guard rails. */
function band(R: number): BufferGeometry[] {
  const sheet = revolve(ring(R - 0.002, R, -0.006, 0.038), { chamfer: 0.4 * mm, segments: 40, ...BAND });
  const rail = (from: number): BufferGeometry =>
    revolve(ring(R - 0.0045, R - 0.0005, from, from + 0.004), {
      chamfer: 1 * mm,
      segments: 40,
      from: BAND.from + BAND.length - 0.03,
      length: 2 * Math.PI - BAND.length + 0.06,
    });
  const bolts = Array.from({ length: 4 }, (_, i) => {
    const a = (i / 4) * Math.PI * 2 + Math.PI / 4;
    const foot = block(0.022, 0.004, 0.022, 0.6 * mm, 5 * mm).translate(
      (R + 0.004) * Math.sin(a),
      0.036,
      (R + 0.004) * Math.cos(a),
    );
    const bolt = rise(outline(hexagon(0.01)), 0.006, 0.6 * mm).translate(
      (R + 0.006) * Math.sin(a),
      0.038,
      (R + 0.006) * Math.cos(a),
    );
    return [painted(foot, 'sage'), painted(bolt, 'zinc')];
  }).flat();
  return [painted(sheet, 'sage'), painted(rail(-0.0065), 'sage'), painted(rail(0.0345), 'sage'), ...bolts];
}

/** Cast spout on the housing's rim that carries the eye; drawn about the starter's own axis. */
function spout(R: number, depth: number): BufferGeometry[] {
  const neck = revolve(
    [
      [0, -0.02],
      [0.021, -0.02],
      [0.0165, 0.004, 0],
      [0.0125, SPOUT - 0.004],
      [0, SPOUT - 0.004],
    ],
    { chamfer: 1 * mm, segments: 24 },
  );
  // Laid radially: first to the front, then up to where the cord leaves (the starter's height runs to the left).
  return [
    painted(
      neck
        .rotateX(Math.PI / 2)
        .translate(0, depth * 0.5, R - 0.008)
        .rotateY(CORD_RISE),
      'sage',
    ),
  ];
}

/** Where the cord leaves the starter, engine coordinates. */
export function cordGuide(def: SetDefinition): Spot {
  const d = dimsOf(def, 'starter');
  const r = d('coverRadius') - 0.008 + SPOUT;
  return [
    -d('from') - d('depth') * 0.5,
    dimsOf(def, 'crankcase')('crankHeight') + r * Math.sin(CORD_RISE),
    r * Math.cos(CORD_RISE),
  ];
}

/** Guide eye at the spout's end, its axis along y. */
export function guideForm(): BufferGeometry {
  const eye = revolve(
    [
      [0.0038, -0.006],
      [0.0115, -0.006],
      [0.0115, 0.001],
      [0.008, 0.0045, 0],
      [0.0052, 0.0035, 0],
      [0.0038, 0, 0],
    ],
    { segments: 24 },
  );
  const mouth = revolve(ring(0, 0.004, -0.005, -0.004), { segments: 12, chamfer: 0 });
  return joined([painted(eye, 'brass'), painted(mouth, 'dark')]);
}

/** Handle of the cord: a T with a waisted bar and a neck with the knot's ferrule, the cord coming to height 0. */
export function handleForm(def: SetDefinition): BufferGeometry {
  const half = dimsOf(def, 'starter')('handleLength') / 2 + 0.006;
  const grip = revolve(
    [
      [0, -half],
      [0.009, -half, 3 * mm],
      [0.0135, -half * 0.72, 0],
      [0.0125, -half * 0.4, 0],
      [0.0105, 0, 0],
      [0.0125, half * 0.4, 0],
      [0.0135, half * 0.72, 0],
      [0.009, half, 3 * mm],
      [0, half],
    ],
    { segments: 22 },
  )
    .rotateZ(Math.PI / 2)
    .translate(0, 0.027, 0);
  const neck = revolve(
    [
      [0, 0],
      [0.0065, 0],
      [0.0075, 0.006, 0],
      [0.0075, 0.014, 0],
      [0.0115, 0.022, 0],
      [0, 0.026, 0],
    ],
    { segments: 20 },
  );
  const ferrule = revolve(ring(0, 0.0048, -0.007, 0.001), { segments: 14 });
  return joined([painted(grip, 'bakelite'), painted(neck, 'bakelite'), painted(ferrule, 'brass')]);
}
