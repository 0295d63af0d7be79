import type { SetDefinition } from '../../sim/set/definition.ts';
import { airBoxForm, airCoverForm, elementForm } from '../engine/airBox.ts';
import { cowlForm, exhaustForm, flywheelForm } from '../engine/around.ts';
import { filterHeadForm } from '../engine/bowl.ts';
import { camBoxForm } from '../engine/camBox.ts';
import { castingsForm } from '../engine/castings.ts';
import {
  decompressorForm,
  injectorForm,
  leverForm,
  leverPlaces,
  quadrantForm,
  stopPlateForm,
} from '../engine/controls.ts';
import { detailsForm } from '../engine/details.ts';
import { frameForm } from '../engine/frame.ts';
import { frontFittings } from '../engine/frontFittings.ts';
import { capForm, fuelPlaces, tankForm, tapBodyForm, tapLeverForm } from '../engine/fuel.ts';
import { generatorForm } from '../engine/generator.ts';
import { CORD_RISE, cordGuide, guideForm, handleForm, starterForm } from '../engine/starter.ts';
import { tankStraps } from '../engine/tankStand.ts';
import { dimsOf } from '../form/dims.ts';
import type { Spot } from '../form/tube.ts';
import { joined } from '../look/paints.ts';
import type { Parts } from '../parts/readParts.ts';
import { type Materials, type Piece, pieceOf } from './piece.ts';
import { type Pose, pose } from './pose.ts';
import { SET_AT } from './spots.ts';

/** Injector's foot on the head and the tilt of its axis about x, engine coordinates. */
export function injectorSeat(def: SetDefinition): { at: Spot; tilt: number } {
  const c = dimsOf(def, 'cylinder');
  return { at: [-0.028, c('headTop') - 0.012, 0.04 - c('back') + 0.012], tilt: 0.5 };
}

/** A fixed place on the engine as a world pose. */
export function onSet(at: Spot, rx = 0, ry = 0, rz = 0): Pose {
  return pose(SET_AT.x + at[0], at[1], SET_AT.z + at[2], rx, ry, rz);
}

/** Air box, its foot and direction, engine coordinates. */
export const AIR_BOX: Spot = [0.128, 0.402, -0.03];

/**
 * Everything of the set that is not the pump, with the pose of each piece at rest.
 *
 * `near`: for what works the pump and is looked at with it; `material`: for what stands behind.
 */
export function setPieces(
  def: SetDefinition,
  { near, material }: { near: Materials; material: Materials },
  parts: Parts,
): { piece: Piece; home: Pose }[] {
  const crankY = dimsOf(def, 'crankcase')('crankHeight');
  const half = dimsOf(def, 'crankcase')('halfLength');
  const deck = dimsOf(def, 'deck');
  const body = dimsOf(def, 'body');
  const levers = leverPlaces(def);
  const fuel = fuelPlaces(def);
  const injector = injectorSeat(def);
  const from = dimsOf(def, 'starter')('from');
  const studs = joined(
    [-1, 1].map((s) => parts.form('stud').whole.translate((s * body('studSpacing')) / 2, 0, 0)),
  );
  const make = (
    id: string,
    form: Parameters<typeof pieceOf>[1],
    home: Pose,
    of = material,
  ): { piece: Piece; home: Pose } => ({ piece: pieceOf(id, form, of), home });
  return [
    make('engine', joined([castingsForm(def), cowlForm(def), detailsForm(def)]), onSet([0, 0, 0])),
    make('frame', frameForm(def), onSet([0, 0, 0])),
    make('generator', generatorForm(def), onSet([0, 0, 0])),
    make('starter', starterForm(def), onSet([0, 0, 0])),
    make('exhaust', exhaustForm(def), onSet([0, 0, 0])),
    make(
      'camBox',
      camBoxForm(
        deck,
        body,
        half,
        0.075,
        {
          height: camHeight(def),
          radius: dimsOf(def, 'camshaft')('radius'),
          journal: dimsOf(def, 'camshaft')('journal'),
        },
        frontFittings(def),
      ),
      onSet([0, 0, 0]),
    ),
    make('camshaft', parts.form('camshaft'), onSet([deck('side'), camHeight(def), deck('front')]), near),
    make(
      'fork',
      parts.form('fork'),
      onSet([
        deck('side'),
        deck('height') - body('flangeFromCamEnd') - dimsOf(def, 'fork')('pivotBelow'),
        deck('front'),
      ]),
      near,
    ),
    make('studs', studs, onSet([deck('side'), deck('height'), deck('front')]), near),
    make('flywheel', flywheelForm(def), onSet([-from + 0.001, crankY, 0])),
    make('guide', guideForm(), onSet(cordGuide(def), Math.PI / 2 - CORD_RISE)),
    make('cordHandle', handleForm(def), onSet(cordGuide(def), Math.PI / 2 - CORD_RISE)),
    make('quadrant', quadrantForm(), onSet(levers.throttle)),
    make('throttle', leverForm(0.062, 'bakelite'), onSet(levers.throttle)),
    make('stopPlate', stopPlateForm(), onSet(levers.stop)),
    make('stopLever', leverForm(0.05, 'signRed'), onSet(levers.stop)),
    make('decompressor', decompressorForm(), onSet(levers.decompressor)),
    make('airBox', airBoxForm(), onSet(AIR_BOX)),
    make('airElement', elementForm(), onSet(AIR_BOX)),
    make('airCover', airCoverForm(), onSet([AIR_BOX[0], AIR_BOX[1], AIR_BOX[2] + 0.058])),
    make('injector', injectorForm(), onSet(injector.at, injector.tilt)),
    make('tank', joined([tankForm(def), ...tankStraps(def)]), onSet([0, 0, 0])),
    make('cap', capForm(), onSet([fuel.cap[0], fuel.cap[1] + 0.008, fuel.cap[2]])),
    make('tapBody', tapBodyForm(def), onSet([0, 0, 0])),
    make('tap', tapLeverForm(), onSet(fuel.tap)),
    make('filterHead', filterHeadForm(def), onSet(fuel.bowl)),
  ];
}

/** Height of the camshaft's axis: its base circle touches the cup when the plunger is down, m. */
export function camHeight(def: SetDefinition): number {
  const deck = dimsOf(def, 'deck');
  const body = dimsOf(def, 'body');
  return (
    deck('height') -
    body('flangeFromCamEnd') +
    def.pump.nominalShim -
    dimsOf(def, 'cup')('proud') -
    def.cam.baseRadius
  );
}
