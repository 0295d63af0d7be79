import type { BufferGeometry, Material } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { exhaustHose } from '../engine/around.ts';
import { joined } from '../look/paints.ts';
import { clothForm, ragForm } from '../place/cloth.ts';
import { ballPeinForm, clubHammerForm, crossPeinForm, heavyHammerForm } from '../place/hammers.ts';
import { boardForm, bottleForm, fuelCanForm, solventForm } from '../place/liquids.ts';
import { loadBoardForm } from '../place/loadBoard.ts';
import {
  brushForm,
  capsForm,
  cardForm,
  leverBarForm,
  pliersForm,
  screwdriverForm,
  swabForm,
  toolRollForm,
} from '../place/rolled.ts';
import { benchTopForm, wallForm } from '../place/room.ts';
import { spannerForm, torqueWrenchForm } from '../place/tools.ts';
import { trayForm } from '../place/tray.ts';
import { tommyBarForm, viceBodyForm, viceSlideForm } from '../place/vice.ts';
import { anvilForm, woodBlockForm } from '../place/workBlocks.ts';
import { type Piece, pieceOf } from './piece.ts';
import { type Pose, pose } from './pose.ts';
import { ANVIL_AT, CLOTH_AT, LOAD_BOARD_AT, ROLL_AT, SET_AT, TRAY_AT, TRAY_SIZE, VICE_AT } from './spots.ts';

export type Placed = { readonly piece: Piece; readonly home: Pose };

/** The bench and what always lies or stands on it; `ground`: the material of what shadows fall on. */
export function placePieces(def: SetDefinition, material: Material, ground: Material): Placed[] {
  const make = (id: string, form: BufferGeometry, home: Pose, own = material): Placed => ({
    piece: pieceOf(id, form, own),
    home,
  });
  return [
    make('benchTop', benchTopForm(def), pose(), ground),
    make('wall', wallForm(), pose()),
    make('throughWall', joined(throughTheWall(def)), pose()),
    make('cloth', clothForm(0.27, 0.22), pose(CLOTH_AT.x, 0, CLOTH_AT.z, 0, 0.06), ground),
    make('tray', trayForm(TRAY_SIZE.width, TRAY_SIZE.depth), pose(TRAY_AT.x, 0, TRAY_AT.z), ground),
    make('anvil', anvilForm(), pose(ANVIL_AT.x, 0, ANVIL_AT.z, 0, -0.12)),
    make('vice', viceBodyForm(), pose(VICE_AT.x, 0, VICE_AT.z)),
    make('viceSlide', viceSlideForm(), pose(VICE_AT.x, 0, VICE_AT.z)),
    make('tommyBar', tommyBarForm(), pose(VICE_AT.x, 0.072, VICE_AT.z + 0.074, 0, 0, 0.5)),
    make('toolRoll', toolRollForm(ROLL_WIDTH, ROLL_DEPTH, LOOPS), pose(ROLL_AT.x, 0, ROLL_AT.z), ground),
  ];
}

/** The tools, each with its place on the roll or at the back of the bench. */
export function toolPieces(material: Material, def: SetDefinition): Placed[] {
  const make = (id: string, form: BufferGeometry, home: Pose): Placed => ({
    piece: pieceOf(id, form, material),
    home,
  });
  const rolled = (id: string, form: BufferGeometry, x: number, z: number, turn = 0): Placed =>
    make(id, form, pose(ROLL_AT.x + x, 0.0048, ROLL_AT.z + z, 0, turn));
  return [
    rolled('lightHammer', ballPeinForm(), -0.3, -0.112, 0.02),
    rolled('mediumHammer', crossPeinForm(), -0.21, -0.114, -0.02),
    rolled('heavyHammer', heavyHammerForm(), -0.115, -0.11, 0.02),
    rolled('spanner', spannerForm(0.017, 0.17), -0.05, -0.075, 0.03),
    rolled('secondSpanner', spannerForm(0.019, 0.19), 0.0, -0.08, -0.02),
    rolled('torqueWrench', torqueWrenchForm(), 0.055, -0.118, 0.02),
    rolled('screwdriver', screwdriverForm(), 0.112, -0.112, -0.02),
    rolled('pliers', pliersForm(), 0.168, -0.03, 0.03),
    rolled('lever', leverBarForm(), 0.222, -0.105, -0.02),
    rolled('swab', swabForm(), 0.262, -0.075, 0.03),
    rolled('brush', brushForm(), 0.312, 0.02, -0.03),
    make('sledge', clubHammerForm(), pose(0.66, 0, 0.405, 0, Math.PI / 2 - 0.07)),
    make('woodBlock', woodBlockForm(def), pose(0.245, 0.015, 0.115, 0, 0.3, Math.PI)),
    make('card', cardForm(), pose(0.183, 0, 0.203, 0, 0.12)),
    make('caps', capsForm(), pose(0.635, 0, 0.12)),
    make('rag', ragForm(), pose(0.665, 0, 0.235, 0, 0.7)),
    make('board', boardForm(), pose(0.66, 0, -0.26, 0, 0.2)),
    make('releasingSolvent', solventForm(), pose(0.42, 0, -0.24, 0, 0.25)),
    make('diesel', bottleForm('brass', 'bakelite', 0.03, 0.15, 'DIESEL'), pose(0.535, 0, -0.25)),
    make('acetone', bottleForm('trayEnamel', 'signRed', 0.024, 0.13, 'ACETONE'), pose(0.6, 0, -0.17)),
    make('fuelCan', fuelCanForm(), pose(0.79, 0, -0.2, 0, 2.6)),
  ];
}

const ROLL_WIDTH = 0.72;
const ROLL_DEPTH = 0.28;

/** Loops of the tool roll over the handles: middle, half width, height, m. */
const LOOPS = [
  [-0.297, 0.0095, 0.025],
  [-0.213, 0.0095, 0.025],
  [-0.112, 0.011, 0.031],
  [-0.047, 0.007, 0.011],
  [-0.002, 0.0075, 0.012],
  [0.058, 0.011, 0.026],
  [0.109, 0.0125, 0.028],
  [0.17, 0.025, 0.014],
  [0.219, 0.0065, 0.013],
  [0.266, 0.004, 0.012],
  [0.312, 0.012, 0.015],
] as const;

/** What stands at the wall: the exhaust's hose that leads through it, the board of the load. */
function throughTheWall(def: SetDefinition): BufferGeometry[] {
  return [
    ...exhaustHose(def, WALL_AT - SET_AT.z).map((g) => g.translate(SET_AT.x, 0, SET_AT.z)),
    ...loadBoardForm().map((g) => g.translate(LOAD_BOARD_AT.x, 0, LOAD_BOARD_AT.z)),
  ];
}

/** Where the plaster wall stands behind the bench, m. */
const WALL_AT = -1.2;
