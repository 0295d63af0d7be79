import type { BufferGeometry, Shape } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { extrude, type Flat, hole, outline, rectangle, rise, roundHole } from '../form/extrude.ts';
import type { PartForm } from '../form/part.ts';
import type { Corner } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';
import { type Hatch, turned } from './turned.ts';

const PAIR: Hatch = { angle: -Math.PI / 4, spacing: 0.9 * mm, light: true };
const SOLID: Hatch = { angle: 0, spacing: 0 };

/** The barrel: lapped bore, collar that rests on the body's ledge, feed and spill port through the collar. */
export function barrelForm(d: Dims, bore: number): PartForm {
  const side: Corner[] = [
    [bore + 0.05 * mm, d('from')],
    [d('lowerRadius'), d('from')],
    [d('lowerRadius'), d('collarFrom'), 0],
    [d('collarRadius'), d('collarFrom')],
    [d('collarRadius'), d('to')],
    [bore + 0.05 * mm, d('to')],
  ];
  const form = turned(side, 'groundSteel', PAIR, 0.25 * mm, 36);
  const ports = (): BufferGeometry[] => [-1, 1].map((s) => portMouth(d, s));
  return {
    whole: joined([form.whole, ...ports()]),
    half: joined([form.half ?? form.whole, ...portCuts(d, bore)]),
    ...(form.cut === undefined ? {} : { cut: form.cut }),
  };
}

/** A port as seen from outside: countersunk rim and dark bore. */
function portMouth(d: Dims, side: number): BufferGeometry {
  const r = d('portDiameter') / 2;
  const rim = revolve(
    [
      [0, 0],
      [r + 0.5 * mm, 0],
      [r, 0.35 * mm],
      [0, 0.36 * mm],
    ],
    { chamfer: 0, segments: 20 },
  );
  const lay = (g: BufferGeometry): BufferGeometry =>
    g.rotateZ((-side * Math.PI) / 2).translate(side * (d('collarRadius') - 0.12 * mm), d('portCentre'), 0);
  const bore = revolve(
    [
      [0, 0],
      [r, 0],
      [r, 0.4 * mm],
      [0, 0.4 * mm],
    ],
    { chamfer: 0, segments: 20 },
  );
  return joined([painted(lay(rim), 'lappedSteel'), painted(lay(bore), 'dark')]);
}

/** The two drillings in the cut face: dark half-round channels, drawn as faces just proud of the cut. */
function portCuts(d: Dims, bore: number): BufferGeometry[] {
  const width = d('collarRadius') - bore;
  return [-1, 1].map((side) =>
    painted(
      extrude(outline(rectangle(width + 0.1 * mm, d('portDiameter'))), 0.05 * mm, 0).translate(
        side * (bore + width / 2),
        d('portCentre'),
        0,
      ),
      'dark',
    ),
  );
}

/** The cup between cam and plunger: nose through the retaining ring, skirt guided in the bore. */
export function cupForm(d: Dims): PartForm {
  const base = -d('proud');
  const top = base + d('height');
  const side: Corner[] = [
    [0, base, 0],
    [d('noseRadius'), base, 0.5 * mm],
    [d('noseRadius'), base + d('noseHeight'), 0],
    [d('radius'), base + d('noseHeight')],
    [d('radius'), top],
    [d('radius') - d('wall'), top],
    [d('radius') - d('wall'), base + d('floor') + 1.5 * mm, 0],
    [d('radius') - d('wall') - 2.3 * mm, base + d('floor'), 0],
    [0, base + d('floor'), 0],
  ];
  return turned(side, 'groundSteel', { angle: -Math.PI / 4, spacing: 1.1 * mm }, 0.3 * mm, 48);
}

/** Internal retaining ring with its two eyes, open towards the back. */
export function retainerForm(d: Dims): PartForm {
  const y = d('from');
  const band: Corner[] = [
    [d('innerRadius'), y, 0],
    [d('outerRadius'), y, 0],
    [d('outerRadius'), y + d('thickness'), 0],
    [d('innerRadius'), y + d('thickness'), 0],
  ];
  const gap = 0.34;
  const eye = (side: number): BufferGeometry => {
    const a = Math.PI + side * (gap + 0.05);
    const lug = outline(rectangle(4.4 * mm, 4.4 * mm), 1.6 * mm);
    lug.holes.push(roundHole(0, 0, 0.9 * mm));
    return rise(lug, d('thickness'), 0.1 * mm, 4).translate(
      Math.sin(a) * (d('innerRadius') + 0.2 * mm),
      y,
      Math.cos(a) * (d('innerRadius') + 0.2 * mm),
    );
  };
  const whole = joined([
    painted(
      revolve(band, { from: gap - Math.PI, length: 2 * Math.PI - 2 * gap, chamfer: 0.15 * mm, segments: 48 }),
      'phosphate',
    ),
    painted(eye(1), 'phosphate'),
    painted(eye(-1), 'phosphate'),
  ]);
  return { ...turned(band, 'phosphate', SOLID, 0.1 * mm), whole };
}

/** Lower seat of the return spring: a washer with a slot, slipped over the stem. */
export function springPlateForm(d: Dims): PartForm {
  const y = d('from');
  const side: Corner[] = [
    [d('hole'), y],
    [d('radius'), y],
    [d('radius'), y + d('thickness')],
    [d('hole'), y + d('thickness')],
  ];
  return turned(side, 'darkSteel', SOLID, 0.25 * mm);
}

/** The control pin, pressed into the plunger's collar, pointing to the front at height 0. */
export function pinForm(d: Dims): BufferGeometry {
  const r = d('diameter') / 2;
  const rod = revolve(
    [
      [0, d('root')],
      [r, d('root')],
      [r, d('root') + d('length') - 0.4 * mm, 0],
      [r - 0.4 * mm, d('root') + d('length'), 0],
      [0, d('root') + d('length'), 0],
    ],
    { segments: 18 },
  );
  return painted(rod.rotateX(Math.PI / 2), 'lappedSteel');
}

/** One shim: the flange's outline in thin steel, at height 0 upwards. */
export function shimForm(body: Dims, thickness: number): PartForm {
  const whole = shimOutline(body, false);
  for (const side of [-1, 1])
    whole.holes.push(roundHole((side * body('studSpacing')) / 2, 0, body('slotWidth') / 2));
  const plate = (shape: Shape): BufferGeometry => painted(rise(shape, thickness, 0, 10), 'zinc');
  return { whole: plate(whole), half: plate(shimOutline(body, true)) };
}

/** Outline in x, -z with the pump's bore and the fork's channel; for the section only what lies behind the axis. */
function shimOutline(body: Dims, back: boolean): Shape {
  const w = body('flangeWidth') / 2 - 1 * mm;
  const z = body('flangeDepth') / 2 - 1 * mm;
  const front = body('flangeFront') - 1 * mm;
  const r = body('pilotRadius') + 0.2 * mm;
  const rear: Flat[] = [
    [w, 0.009],
    [0.017, z],
    [-0.017, z],
    [-w, 0.009],
  ];
  if (back) {
    const arch = Array.from({ length: 17 }, (_, i): Flat => {
      const a = Math.PI - (Math.PI * i) / 16;
      return [r * Math.cos(a), r * Math.sin(a), 0];
    });
    return outline([[-w, 0, 0], ...arch, [w, 0, 0], ...rear], 0.008);
  }
  const shape = outline(
    [[-w, -0.009], [-0.0155, -front, 0.003], [0.0155, -front, 0.003], [w, -0.009], ...rear],
    0.008,
  );
  shape.holes.push(roundHole(0, 0, r));
  const channel = rectangle(body('windowWidth'), 0.008, 0, -body('channelDepth') + 0.004);
  shape.holes.push(hole([...channel].reverse()));
  return shape;
}
