import { type BufferGeometry, Vector3 } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { swung } from '../form/curve.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, outline, rectangle, roundHole } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { bentTube, type Spot, slackTube } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';
import { alongX } from './castings.ts';

/** Sheet-metal cowl that leads the flywheel's air over the fins. */
export function cowlForm(def: SetDefinition): BufferGeometry {
  const c = dimsOf(def, 'cylinder');
  const z = -c('back');
  const duct = alongX(
    [
      [-0.098, 0.332],
      [0.05, 0.332],
      [0.05, c('headTop') - 0.008, 0.02],
      [-0.098, c('headTop') - 0.008, 0.02],
    ],
    0.062,
    0.01,
    2 * mm,
  ).translate(-0.1, 0, 0);
  const back = block(0.15, c('headTop') - 0.29, 0.0016, 0.4 * mm).translate(
    0,
    (c('headTop') + 0.29) / 2,
    z - 0.078,
  );
  const wrap = block(0.0016, c('headTop') - 0.29, 0.14, 0.4 * mm).translate(
    -0.075,
    (c('headTop') + 0.29) / 2,
    z - 0.004,
  );
  return joined([painted(duct, 'sage'), painted(back, 'sage'), painted(wrap, 'sage')]);
}

/** Flywheel about the crank's axis (x), its face to the left, at the axis. */
export function flywheelForm(def: SetDefinition): BufferGeometry {
  const R = def.crank.flywheelRadius - 0.004;
  const disc = revolve(
    [
      [0.02, -0.016],
      [R - 0.02, -0.016, 0],
      [R - 0.016, -0.014],
      [R, -0.014],
      [R, 0.014],
      [R - 0.018, 0.014],
      [R - 0.022, 0.004, 0],
      [0.03, 0.004, 0],
      [0.026, 0.02],
      [0.02, 0.02],
    ],
    { chamfer: 1 * mm, segments: 50 },
  );
  const vanes = Array.from({ length: 16 }, (_, i) => {
    const a = (i / 16) * Math.PI * 2;
    return painted(
      block(0.003, 0.02, 0.04, 0.4 * mm)
        .translate(0, 0.014, R - 0.05)
        .rotateY(a),
      'castAluminium',
    );
  });
  const mark = painted(block(0.0016, 0.024, 0.0016, 0).translate(0, -0.004, R).rotateY(0), 'white');
  return joined([painted(disc, 'machinedIron'), ...vanes, mark]).rotateZ(Math.PI / 2);
}

/** Exhaust: elbow from the head, silencer drum with its seams, tail pipe with a clamp, heat shield with holes. */
export function exhaustForm(def: SetDefinition): BufferGeometry {
  const c = dimsOf(def, 'cylinder');
  const y = c('headTop') - 0.03;
  const z = -c('back') - 0.135;
  const drum = revolve(
    [
      [0, -0.085],
      [0.03, -0.085],
      [0.04, -0.08, 0],
      [0.044, -0.079],
      [0.044, -0.074],
      [0.042, -0.073, 0],
      [0.042, 0.073, 0],
      [0.044, 0.074],
      [0.044, 0.079],
      [0.04, 0.08, 0],
      [0.03, 0.085],
      [0, 0.085],
    ],
    { chamfer: 0.6 * mm, segments: 26 },
  )
    .rotateZ(Math.PI / 2)
    .translate(0.05, y, z);
  const elbow = bentTube(
    [
      [0.03, y, -c('back') - 0.05],
      [0.03, y, z],
    ],
    0.03,
    0.02,
    8,
    14,
  );
  const end = tailEnd(def);
  const tail = bentTube([[-0.03, y + 0.008, z], [end[0], y + 0.008, z], end], 0.026, 0.034, 20, 16);
  const shield = extrude(outline(rectangle(0.15, 0.062), 6 * mm), 1.2 * mm, 0.2 * mm, 3).translate(
    0.05,
    y,
    z + 0.052,
  );
  return joined([
    painted(drum, 'heatSteel'),
    painted(elbow, 'heatSteel'),
    painted(tail, 'heatSteel'),
    painted(shield, 'zinc'),
  ]);
}

/** Draws every other ring of a tube a little in towards its middle, and darker, as the grooves of a corrugated hose are. */
function corrugate(hose: BufferGeometry, rings: number): void {
  const position = hose.getAttribute('position');
  const tint = hose.getAttribute('tint');
  const middle = new Vector3();
  const p = new Vector3();
  for (let i = 1; i <= rings; i += 2) {
    const first = i * (ROUND + 1);
    middle.set(0, 0, 0);
    for (let k = 0; k < ROUND; k++)
      middle.addScaledVector(p.fromBufferAttribute(position, first + k), 1 / ROUND);
    for (let v = first; v <= first + ROUND; v++) {
      p.fromBufferAttribute(position, v).lerp(middle, 0.1);
      position.setXYZ(v, p.x, p.y, p.z);
      for (const c of [0, 1, 2]) tint.setComponent(v, c, tint.getComponent(v, c) * 0.62);
    }
  }
}

/** Sides of the exhaust hose. */
const ROUND = 7;

/** Where the exhaust leaves the set, upwards, engine coordinates, m. */
export function tailEnd(def: SetDefinition): Spot {
  const c = dimsOf(def, 'cylinder');
  return [-0.096, c('headTop') + 0.06, -c('back') - 0.135];
}

/** Corrugated metal hose that leads the exhaust out through the wall, engine coordinates; `wall` is the wall's z there. */
export function exhaustHose(def: SetDefinition, wall: number): BufferGeometry[] {
  const from = tailEnd(def);
  const out: Spot = [from[0] - 0.13, from[1] + 0.06, wall + 0.005];
  const straight: Spot = [from[0], from[1] + 0.012, from[2]];
  const path: Spot[] = [
    [from[0], from[1] - 0.03, from[2]],
    [from[0], from[1] - 0.01, from[2]],
    ...swung(
      straight,
      [from[0], from[1] + 0.17, from[2] - 0.01],
      [out[0], out[1] + 0.05, from[2] + (wall - from[2]) * 0.45],
      out,
      14,
    ),
  ];
  const rings = 96;
  const hose = painted(slackTube(path, 0.036, rings, ROUND), 'zinc', 0.8);
  corrugate(hose, rings);
  const clamp = revolve(ring(0.017, 0.0205, -0.022, -0.008), { segments: 22 }).translate(...from);
  return [hose, painted(clamp, 'plainSteel'), ...wallPlate(out, wall)];
}

/** Plate on the wall with the hole through which the hose goes out, its rim turned up, a screw at each corner. */
function wallPlate([x, y]: Spot, wall: number): BufferGeometry[] {
  const sheet = outline(rectangle(0.125, 0.125), 8 * mm);
  sheet.holes.push(roundHole(0, 0, 0.0285));
  const rim = revolve(ring(0.0275, 0.0305, 0, 0.009), { segments: 28, chamfer: 0.8 * mm }).rotateX(
    Math.PI / 2,
  );
  const hole = revolve(ring(0, 0.0285, 0, 0.0006), { segments: 24, chamfer: 0 }).rotateX(Math.PI / 2);
  const screws = [-1, 1].flatMap((i) =>
    [-1, 1].map((j) =>
      revolve(ring(0, 0.005, 0, 0.005), { segments: 12, chamfer: 1 * mm })
        .rotateX(Math.PI / 2)
        .translate(i * 0.05, j * 0.05, 0),
    ),
  );
  return [
    painted(extrude(sheet, 2.5 * mm, 0.5 * mm, 7), 'zinc', 0.8),
    painted(rim, 'zinc', 0.8),
    painted(hole, 'dark'),
    ...screws.map((g) => painted(g, 'plainSteel')),
  ].map((g) => g.translate(x, y, wall));
}
