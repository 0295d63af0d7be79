import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, extrude, hexagon, outline, rectangle, rise, roundHole } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { bentTube } from '../form/tube.ts';
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
    { chamfer: 1 * mm, segments: 48 },
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

/** Recoil starter: ring that carries it, dished cover with slots, hub, rope guide. */
export function starterForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'starter');
  const y = dimsOf(def, 'crankcase')('crankHeight');
  const R = d('coverRadius');
  const depth = d('depth');
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
    { chamfer: 0.8 * mm, segments: 42 },
  );
  const hub = revolve(
    [
      [0, depth],
      [0.03, depth],
      [0.03, depth + 0.003],
      [0.012, depth + 0.005, 0],
      [0, depth + 0.005, 0],
    ],
    { segments: 26 },
  );
  const slots = Array.from({ length: 12 }, (_, i) => {
    const a = (i / 12) * Math.PI * 2;
    return painted(
      rise(outline(rectangle(0.016, 0.04), 0.006), 0.0012, 0.2 * mm, 4)
        .translate(0, depth - 0.0225, -0.104)
        .rotateY(a),
      'dark',
    );
  });
  // The band round the flywheel is open at the front below, where the rim is seen and can be turned by hand.
  const band = revolve(
    [
      [R - 0.002, -0.006],
      [R, -0.006],
      [R, 0.038],
      [R - 0.002, 0.038],
    ],
    { chamfer: 0.4 * mm, segments: 48, from: 0.5, length: 4.35 },
  );
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
  const lay = (g: BufferGeometry): BufferGeometry => g.rotateZ(Math.PI / 2).translate(-d('from'), y, 0);
  return joined(
    [painted(shell, 'sage'), painted(band, 'sage'), painted(hub, 'zinc'), ...slots, ...bolts].map(lay),
  );
}

/** Where the cord leaves the starter, engine coordinates. */
export function cordGuide(def: SetDefinition): readonly [number, number, number] {
  const d = dimsOf(def, 'starter');
  return [-d('from') - d('depth') * 0.5, dimsOf(def, 'crankcase')('crankHeight') + 0.118, 0.1];
}

/** Guide eye at the starter's edge. */
export function guideForm(): BufferGeometry {
  const eye = revolve(
    [
      [0.0035, -0.004],
      [0.009, -0.004],
      [0.009, 0.004],
      [0.006, 0.009, 0],
      [0.0035, 0.006, 0],
    ],
    { segments: 16 },
  );
  return painted(eye, 'bakelite');
}

/** Handle of the cord: a T of two grips, the cord at height 0. */
export function handleForm(def: SetDefinition): BufferGeometry {
  const length = dimsOf(def, 'starter')('handleLength');
  const grip = revolve(
    [
      [0, -length / 2],
      [0.008, -length / 2, 3 * mm],
      [0.0115, -length / 4, 0],
      [0.0095, 0, 0],
      [0.0115, length / 4, 0],
      [0.008, length / 2, 3 * mm],
      [0, length / 2],
    ],
    { segments: 16 },
  ).rotateZ(Math.PI / 2);
  const neck = revolve(
    [
      [0, -0.014],
      [0.005, -0.014],
      [0.008, 0],
      [0, 0.004],
    ],
    { segments: 14 },
  );
  return joined([painted(grip.translate(0, 0.006, 0), 'bakelite'), painted(neck, 'bakelite')]);
}

/** Exhaust: elbow from the head, silencer drum, tail pipe, heat shield with holes. */
export function exhaustForm(def: SetDefinition): BufferGeometry {
  const c = dimsOf(def, 'cylinder');
  const y = c('headTop') - 0.03;
  const z = -c('back') - 0.135;
  const drum = revolve(
    [
      [0, -0.085],
      [0.03, -0.085],
      [0.042, -0.079, 0],
      [0.042, 0.079, 0],
      [0.03, 0.085],
      [0, 0.085],
    ],
    { chamfer: 1 * mm, segments: 24 },
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
  const tail = bentTube(
    [
      [0.11, y + 0.01, z],
      [0.16, y + 0.01, z],
      [0.16, y + 0.06, z - 0.01],
    ],
    0.02,
    0.025,
    16,
    14,
  );
  const guard = outline(rectangle(0.15, 0.062), 6 * mm);
  for (let i = 0; i < 7; i++)
    for (let j = 0; j < 3; j++) guard.holes.push(roundHole(-0.057 + i * 0.019, -0.018 + j * 0.018, 4.6 * mm));
  const shield = extrude(guard, 1.2 * mm, 0.2 * mm, 3).translate(0.05, y, z + 0.052);
  return joined([
    painted(drum, 'heatSteel'),
    painted(elbow, 'heatSteel'),
    painted(tail, 'heatSteel'),
    painted(shield, 'zinc'),
  ]);
}
