import type { BufferGeometry } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block, hexagon, outline, rectangle, rise } from '../form/extrude.ts';
import { slot } from '../form/marks.ts';
import { type Corner, ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';
import { controlBox } from './panel.ts';

const ROUND = 34;
/** Lengths of the drive-end bell and of the rear bell. */
const DRIVE = 36 * mm;
const REAR = 58 * mm;

/** Generator end: laminated stator drawn between two end bells by through-bolts, vents in both bells, control box, foot. */
export function generatorForm(def: SetDefinition): BufferGeometry {
  const d = dimsOf(def, 'generator');
  const y = dimsOf(def, 'crankcase')('crankHeight');
  const R = d('radius');
  const L = d('length');
  const lay = (g: BufferGeometry): BufferGeometry => g.rotateZ(-Math.PI / 2).translate(d('from'), y, 0);
  return joined([
    painted(lay(revolve(stator(R, L), { segments: ROUND, chamfer: 0 })), 'darkSteel'),
    painted(lay(revolve(driveBell(R), { chamfer: 1.5 * mm, segments: ROUND })), 'castAluminium'),
    painted(lay(revolve(rearBell(R, L), { chamfer: 1.2 * mm, segments: ROUND })), 'castAluminium'),
    ...throughBolts(R, L).map(lay),
    ...vents(R, L).map(lay),
    ...foot(def),
    ...controlBox(def),
  ]);
}

/** The stack of laminations, a groove here and there where a sheet stands back. */
function stator(R: number, L: number): Corner[] {
  const from = DRIVE - 2 * mm;
  const to = L - REAR + 2 * mm;
  const r = R - 7 * mm;
  const sheets = 6;
  const grooves = Array.from({ length: sheets }, (_, i): Corner[] => {
    const at = from + ((to - from) * (i + 1)) / (sheets + 1);
    return [
      [r, at - 0.6 * mm, 0],
      [r - 1.4 * mm, at, 0],
      [r, at + 0.6 * mm, 0],
    ];
  }).flat();
  return [[0, from], [r, from, 0], ...grooves, [r, to, 0], [0, to]];
}

function driveBell(R: number): Corner[] {
  return [
    [0, 0],
    [R + 0.002, 0],
    [R + 0.002, 0.009],
    [R - 0.002, 0.011, 0],
    [R - 0.002, DRIVE - 0.005, 0],
    [R + 0.0005, DRIVE - 0.004],
    [R + 0.0005, DRIVE],
    [0, DRIVE],
  ];
}

function rearBell(R: number, L: number): Corner[] {
  return [
    [0, L - REAR],
    [R + 0.0005, L - REAR],
    [R + 0.0005, L - REAR + 0.005],
    [R - 0.002, L - REAR + 0.006, 0],
    [R - 0.003, L - 0.026, 0],
    [R - 0.012, L - 0.01, 0],
    [R - 0.03, L - 0.003, 0],
    [R - 0.066, L - 0.001, 0],
    [R - 0.07, L + 0.005],
    [0, L + 0.006],
  ];
}

/** Four long bolts through ears on the bells, nuts at the rear. */
function throughBolts(R: number, L: number): BufferGeometry[] {
  const r = R - 0.0005;
  return [0.25, 0.75, 1.25, 1.75].flatMap((turn) => {
    const a = turn * Math.PI;
    const put = (g: BufferGeometry, height: number): BufferGeometry =>
      g.translate(r * Math.sin(a), height, r * Math.cos(a));
    const ear = (): BufferGeometry => rise(outline(rectangle(0.02, 0.02), 0.009), 0.012, 0.8 * mm, 2);
    const nut = (): BufferGeometry => rise(outline(hexagon(0.011)), 0.007, 0.6 * mm);
    return [
      painted(put(ear(), DRIVE - 0.014), 'castAluminium'),
      painted(put(ear(), L - REAR + 0.002), 'castAluminium'),
      painted(
        put(revolve(ring(0, 0.0036, 0, L - REAR - DRIVE + 0.02), { segments: 10 }), DRIVE - 0.004),
        'zinc',
      ),
      painted(put(nut(), L - REAR + 0.014), 'zinc'),
    ];
  });
}

/** Openings for the cooling air: round the drive bell, round the rear bell's shoulder and over its face. */
function vents(R: number, L: number): BufferGeometry[] {
  const out: BufferGeometry[] = [];
  for (let i = 0; i < 16; i++) {
    const a = ((i + 0.5) / 16) * Math.PI * 2;
    const side = (): BufferGeometry => slot(0.023, 0.013, 4 * mm);
    out.push(
      side()
        .translate(0, 0.021, R - 0.0014)
        .rotateY(a),
    );
    out.push(
      side()
        .translate(0, L - REAR + 0.02, R - 0.0014)
        .rotateY(a),
    );
    out.push(
      slot(0.0085, 0.03, 4 * mm)
        .rotateX(-Math.PI / 2 + 0.055)
        .translate(0, L - 0.0009, R - 0.047)
        .rotateY(a),
    );
  }
  return out.map((g) => painted(g, 'dark'));
}

/** Cast foot under the stator; its mounts belong to the frame. */
function foot(def: SetDefinition): BufferGeometry[] {
  const d = dimsOf(def, 'generator');
  const low = dimsOf(def, 'crankcase')('crankHeight') - d('radius');
  const web = block(0.03, low - 0.04, 0.09, 2 * mm).translate(MOUNT_AT, (low + 0.064) / 2, 0);
  const plate = block(0.05, 0.008, 0.15, 1 * mm, 6 * mm).translate(MOUNT_AT, 0.058, 0);
  return [painted(web, 'castAluminium'), painted(plate, 'castAluminium')];
}

/** Where along the set the generator's foot stands, m. */
export const MOUNT_AT = 0.232;
