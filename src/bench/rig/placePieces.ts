import type { BufferGeometry, Material } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { boardForm, bottleForm, ragForm } from '../place/liquids.ts';
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
import { anvilForm, benchTopForm, clothForm, trayForm, wallForm, woodBlockForm } from '../place/room.ts';
import { fuelCanForm, hammerForm, solventForm, spannerForm, torqueWrenchForm } from '../place/tools.ts';
import { tommyBarForm, viceBodyForm, viceSlideForm } from '../place/vice.ts';
import { type Piece, pieceOf } from './piece.ts';
import { type Pose, pose } from './pose.ts';
import { ANVIL_AT, CLOTH_AT, ROLL_AT, TRAY_AT, TRAY_SIZE, VICE_AT } from './spots.ts';

export type Placed = { readonly piece: Piece; readonly home: Pose };

/** The bench and what always lies or stands on it. */
export function placePieces(def: SetDefinition, material: Material): Placed[] {
  const make = (id: string, form: BufferGeometry, home: Pose): Placed => ({
    piece: pieceOf(id, form, material),
    home,
  });
  return [
    make('benchTop', benchTopForm(def), pose()),
    make('wall', wallForm(), pose()),
    make('cloth', clothForm(0.27, 0.22), pose(CLOTH_AT.x, 0, CLOTH_AT.z, 0, 0.06)),
    make('tray', trayForm(TRAY_SIZE.width, TRAY_SIZE.depth), pose(TRAY_AT.x, 0, TRAY_AT.z)),
    make('anvil', anvilForm(), pose(ANVIL_AT.x, 0, ANVIL_AT.z, 0, -0.12)),
    make('vice', viceBodyForm(), pose(VICE_AT.x, 0, VICE_AT.z)),
    make('viceSlide', viceSlideForm(), pose(VICE_AT.x, 0, VICE_AT.z)),
    make('tommyBar', tommyBarForm(), pose(VICE_AT.x, 0.072, VICE_AT.z + 0.074, 0, 0, 0.5)),
    make('toolRoll', toolRollForm(0.66, 0.25), pose(ROLL_AT.x, 0, ROLL_AT.z)),
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
    rolled('lightHammer', hammerForm(0.8), -0.275, -0.095, 0.02),
    rolled('mediumHammer', hammerForm(0.94), -0.2, -0.1, -0.03),
    rolled('heavyHammer', hammerForm(1.12), -0.118, -0.104, 0.02),
    rolled('spanner', spannerForm(0.017, 0.17), -0.05, -0.06, 0.03),
    rolled('secondSpanner', spannerForm(0.019, 0.19), 0.0, -0.066, -0.02),
    rolled('torqueWrench', torqueWrenchForm(), 0.055, -0.115, 0.02),
    rolled('screwdriver', screwdriverForm(), 0.105, -0.07, -0.03),
    rolled('pliers', pliersForm(), 0.152, -0.02, 0.04),
    rolled('lever', leverBarForm(), 0.2, -0.12, -0.02),
    rolled('swab', swabForm(), 0.235, -0.06, 0.05),
    rolled('brush', brushForm(), 0.282, -0.03, -0.04),
    make('sledge', hammerForm(1.42), pose(0.645, 0, 0.405, 0, Math.PI / 2 - 0.07)),
    make('woodBlock', woodBlockForm(def), pose(0.24, 0.015, 0.1, 0, 0.3)),
    make('card', cardForm(), pose(0.215, 0, -0.02, 0, 0.5)),
    make('caps', capsForm(), pose(0.635, 0, 0.12)),
    make('rag', ragForm(), pose(0.665, 0, 0.235, 0, 0.7)),
    make('board', boardForm(), pose(0.66, 0, -0.26, 0, 0.2)),
    make('releasingSolvent', solventForm(), pose(0.42, 0, -0.24, 0, 0.25)),
    make('diesel', bottleForm('brass', 'cream', 'bakelite', 0.03, 0.15), pose(0.53, 0, -0.22)),
    make('acetone', bottleForm('trayEnamel', 'trayRim', 'signRed', 0.024, 0.13), pose(0.6, 0, -0.17)),
    make('fuelCan', fuelCanForm(), pose(0.79, 0, -0.2, 0, 2.6)),
  ];
}
