import { BoxGeometry, type BufferGeometry, CylinderGeometry, type Material } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { hosePath } from '../engine/bowl.ts';
import { fuelPlaces } from '../engine/fuel.ts';
import { swung } from '../form/curve.ts';
import { dimsOf, mm } from '../form/dims.ts';
import { block } from '../form/extrude.ts';
import { ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { bentTube, type Spot, slackTube } from '../form/tube.ts';
import { clear, joined, painted } from '../look/paints.ts';
import type { Parts } from '../parts/readParts.ts';
import { type Piece, pieceOf } from './piece.ts';
import { type Pose, pose } from './pose.ts';
import { injectorSeat, onSet } from './setPieces.ts';

/** Where the high-pressure pipe runs, engine coordinates: from the pump's outlet to the injector's inlet. */
export function pipeRun(def: SetDefinition): { from: Spot; to: Spot; tilt: number } {
  const deck = dimsOf(def, 'deck');
  const holder = dimsOf(def, 'holder');
  const foot = deck('height') - dimsOf(def, 'body')('flangeFromCamEnd') + def.pump.nominalShim;
  const { at, tilt } = injectorSeat(def);
  const reach = 0.064;
  return {
    from: [deck('side'), foot + holder('from') + holder('length') - 0.001, deck('front')],
    to: [at[0], at[1] + reach * Math.cos(tilt), at[2] + reach * Math.sin(tilt)],
    tilt,
  };
}

/** Corners of the pipe about its pump end, m. */
function pipeCorners(def: SetDefinition): { corners: Spot[]; end: Spot; tilt: number } {
  const { from, to, tilt } = pipeRun(def);
  const end: Spot = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const up: Spot = [end[0], end[1] + 0.04 * Math.cos(tilt), end[2] + 0.04 * Math.sin(tilt)];
  const corners: Spot[] = [
    [0, 0, 0],
    [0, 0.085, 0],
    [0.045, 0.15, 0.004],
    [0.045, up[1] - 0.005, up[2] + 0.006],
    [end[0] + 0.012, up[1] + 0.012, up[2] + 0.004],
    end,
  ];
  return { corners, end, tilt };
}

/** The pipe as a section shows it: its wall, to be seen through, and the fuel in it (drawn wide, to be seen at all). */
export function pipeTubes(def: SetDefinition): { outer: BufferGeometry; inner: BufferGeometry } {
  const d = dimsOf(def, 'pipe');
  const { corners } = pipeCorners(def);
  return {
    outer: bentTube(corners, d('outerDiameter'), d('bend'), 48, 10),
    inner: bentTube(corners, d('outerDiameter') * 0.66, d('bend'), 48, 8),
  };
}

/** The pipe about its pump end, with the poses of its two nuts in the pipe's own frame. */
export function pipePiece(
  def: SetDefinition,
  material: Material,
  parts: Parts,
): { piece: Piece; home: Pose; nutAtPump: Pose; nutAtInjector: Pose } {
  const { from } = pipeRun(def);
  const { corners, end, tilt } = pipeCorners(def);
  const d = dimsOf(def, 'pipe');
  // The ends themselves are the formed cones.
  const cone = 4 * mm;
  const run: Spot[] = [
    [0, cone, 0],
    ...corners.slice(1, -1),
    [end[0], end[1] + cone * Math.cos(tilt), end[2] + cone * Math.sin(tilt)],
  ];
  const tube = painted(bentTube(run, d('outerDiameter'), d('bend'), 48, 10), 'plainSteel');
  const tail = (at: Spot, rx: number): BufferGeometry =>
    parts
      .form('pipeCone')
      .whole.rotateX(rx)
      .translate(...at);
  return {
    piece: pieceOf('pipe', joined([tube, tail([0, 0, 0], 0), tail(end, tilt)]), material),
    home: onSet(from),
    nutAtPump: pose(0, -0.0125, 0),
    nutAtInjector: pose(end[0], end[1] - 0.0125 * Math.cos(tilt), end[2] - 0.0125 * Math.sin(tilt), tilt),
  };
}

/** Where the hose meets the pump, engine coordinates. */
export function inletEnd(def: SetDefinition): Spot {
  const deck = dimsOf(def, 'deck');
  const body = dimsOf(def, 'body');
  const inlet = dimsOf(def, 'inlet');
  const foot = deck('height') - body('flangeFromCamEnd') + def.pump.nominalShim;
  return [
    deck('side') + body('upperRadius') - 1.5 * mm + inlet('length'),
    foot + body('inletHeight'),
    deck('front'),
  ];
}

/** A worm-drive clip round a hose of radius r about the height axis: band, housing at the right, its slotted screw to the front. */
function clipForm(r: number, width: number): BufferGeometry {
  const band = revolve(ring(r - 0.1 * mm, r + 0.8 * mm, -width / 2, width / 2), { chamfer: 0, segments: 32 });
  const housing = block(3.4 * mm, width + 1.4 * mm, 7 * mm, 0.7 * mm).translate(r + 2.1 * mm, 0, 0);
  const screw = revolve(
    [
      [0, 3 * mm, 0],
      [2.9 * mm, 3 * mm],
      [2.9 * mm, 7 * mm, 0.8 * mm],
      [0, 7 * mm],
    ],
    { segments: 16 },
  )
    .rotateX(Math.PI / 2)
    .translate(r + 2.6 * mm, 0, 0);
  const slot = new BoxGeometry(5.4 * mm, 0.9 * mm, 0.3 * mm).translate(r + 2.6 * mm, 0, 7 * mm);
  return joined([
    painted(band, 'zinc'),
    painted(housing, 'zinc'),
    painted(screw, 'zinc'),
    painted(slot, 'dark'),
  ]);
}

/** The hose on its tail and hanging free, each with its clip. */
export function hosePieces(def: SetDefinition, material: Material): { on: Piece; off: Piece; offEnd: Spot } {
  const d = dimsOf(def, 'inlet');
  const end = inletEnd(def);
  const path = hosePath(def, end);
  const start = path[0] ?? end;
  const offEnd: Spot = [start[0] - 0.02, start[1] - 0.1, start[2] + 0.03];
  const free: Spot[] = [
    start,
    ...swung(
      [start[0] - 0.011, start[1], start[2]],
      [start[0] - 0.042, start[1] - 0.004, start[2] + 0.006],
      [offEnd[0] - 0.006, offEnd[1] + 0.055, offEnd[2] - 0.016],
      offEnd,
      10,
    ),
  ];
  const clip = (at: Spot, rz: number): BufferGeometry =>
    clipForm(d('hoseDiameter') / 2, d('clipWidth'))
      .rotateY(-0.6)
      .rotateZ(rz)
      .translate(...at);
  const tube = (points: readonly Spot[]): BufferGeometry =>
    painted(slackTube(points, d('hoseDiameter'), 32, 10), 'rubber');
  const atBowl = (): BufferGeometry => clip([start[0] - 0.007, start[1], start[2]], -Math.PI / 2);
  return {
    on: pieceOf(
      'hose',
      joined([tube(path), clip([end[0] - 0.004, end[1], end[2]], Math.PI / 2), atBowl()]),
      material,
    ),
    off: pieceOf(
      'hose',
      joined([tube(free), clip([offEnd[0] + 0.001, offEnd[1] + 0.016, offEnd[2] - 0.005], 0), atBowl()]),
      material,
    ),
    offEnd,
  };
}

/** Unit cord from the origin up +y, to be stretched. */
export function cordPiece(material: Material): Piece {
  const rope = new CylinderGeometry(0.0024, 0.0024, 1, 8, 1, true).translate(0, 0.5, 0);
  return pieceOf('cord', painted(rope, 'white'), material);
}

/** Sight tube, bowl, and the fuel in both; fuel is one high and stretched to its level. */
export function fuelPieces(
  def: SetDefinition,
  glass: Material,
): { sight: Piece; level: Piece; bowl: Piece; bowlFuel: Piece; water: Piece } {
  const { sight } = fuelPlaces(def);
  const b = dimsOf(def, 'bowl');
  const pipe = revolve(
    [
      [3.4 * mm, 0],
      [4.2 * mm, 0],
      [4.2 * mm, sight.height],
      [3.4 * mm, sight.height],
    ],
    { segments: 20, chamfer: 0 },
  );
  const column = revolve(
    [
      [0, 0, 0],
      [3.3 * mm, 0, 0],
      [3.3 * mm, 1, 0],
      [0, 1, 0],
    ],
    { segments: 18, chamfer: 0 },
  );
  const r = b('radius');
  const cup = revolve(
    [
      [0, -b('height')],
      [r - 3 * mm, -b('height'), 0],
      [r, -b('height') + 5 * mm, 0],
      [r, 0, 0],
      [r - 1 * mm, 0, 0],
      [r - 1 * mm, -b('height') + 5 * mm, 0],
      [r - 4 * mm, -b('height') + 1 * mm, 0],
      [0, -b('height') + 1 * mm, 0],
    ],
    { segments: 30, chamfer: 0 },
  );
  const inside = (): BufferGeometry =>
    revolve(
      [
        [0, 0, 0],
        [r - 1.4 * mm, 0, 0],
        [r - 1.4 * mm, 1, 0],
        [0, 1, 0],
      ],
      { segments: 28, chamfer: 0 },
    );
  return {
    sight: pieceOf('sight', clear(painted(pipe, 'white'), 0.12), glass),
    level: pieceOf('level', clear(painted(column, 'fuel'), 0.85), glass),
    bowl: pieceOf('bowl', clear(painted(cup, 'white'), 0.1), glass),
    bowlFuel: pieceOf('bowl', clear(painted(inside(), 'fuel'), 0.5), glass),
    water: pieceOf('bowl', clear(painted(inside(), 'cotton'), 0.6), glass),
  };
}

/** A push-in cap for an open end of the given radius, opening downwards onto height 0. */
export function endCap(radius: number): BufferGeometry {
  const r = radius;
  return painted(
    revolve(
      [
        [0, -6 * mm],
        [r - 0.8 * mm, -6 * mm],
        [r, -1 * mm, 0],
        [r, 0, 0],
        [r + 2 * mm, 0],
        [r + 2 * mm, 2.4 * mm],
        [0, 3 * mm],
      ],
      { segments: 24 },
    ),
    'signRed',
  );
}

/** The pump's axis as a chain line: long and short strokes, 0.35 mm wide, from well below to well above. */
export function axisPiece(material: Material): Piece {
  const strokes: BufferGeometry[] = [];
  for (let y = -0.16; y < 0.3; y += 0.018) {
    for (const [from, length] of [
      [0, 0.012],
      [0.0142, 0.0016],
    ] as const) {
      strokes.push(
        painted(new BoxGeometry(0.35 * mm, length, 0.35 * mm).translate(0, y + from + length / 2, 0), 'dark'),
      );
    }
  }
  return pieceOf('axis', joined(strokes), material);
}
