import type { SetDefinition } from '../../sim/set/definition.ts';
import { type Coil, coil } from '../form/coil.ts';
import { type Dims, dimsOf, mm } from '../form/dims.ts';
import type { PartForm } from '../form/part.ts';
import { hatched, type PaintId, painted } from '../look/paints.ts';
import type { Parts } from '../parts/readParts.ts';
import { type Materials, type Piece, pieceOf } from './piece.ts';

export type PumpPieces = {
  readonly pieces: readonly Piece[];
  readonly returnCoil: Coil;
  readonly valveCoil: Coil;
};

/** Height of the plunger's foot above the pump's cam end at no travel, m. */
export function plungerFoot(cup: Dims): number {
  return cup('floor') - cup('proud');
}

/** Room for the return spring between its two seats at no travel, m. */
export function springRoom(def: SetDefinition): number {
  return dimsOf(def, 'body')('ledgeFrom') - dimsOf(def, 'returnSpring')('installedFrom');
}

/** Free length of the return spring, from its room and preload over its rate (rate = G d^4 / 8 D^3 n), m. */
export function springFree(def: SetDefinition): number {
  const { wire, meanDiameter, activeCoils, shearModulus, preload } = def.spring;
  const rate = (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * activeCoils);
  return springRoom(def) + preload / rate;
}

/** Every part of the pump and its fixings: baked, but for the two springs, which are bent as they are pressed. */
export function pumpPieces(def: SetDefinition, material: Materials, parts: Parts): PumpPieces {
  const springs = springsOf(def);
  const make = (id: string, form: Parameters<typeof pieceOf>[1]): Piece => pieceOf(id, form, material);
  const alone = [
    'barrel',
    'plunger',
    'pin',
    'cup',
    'retainer',
    'springPlate',
    'valveSeat',
    'valve',
    'holder',
  ];
  const nut = parts.form('flangeWasher', ['flangeNut', dimsOf(def, 'stud')('washerHeight')]);
  const shim = parts.form('shim');
  const pipeNut = parts.form('pipeNut');
  return {
    ...springs,
    pieces: [
      make('pumpBody', parts.form('pumpBody', 'inlet', 'inletSeal')),
      make('windowCover', parts.form('windowCover', 'coverScrew1', 'coverScrew2')),
      ...alone.map((id) => make(id, parts.form(id))),
      make('returnSpring', springForm(springs.returnCoil, 'phosphate', 0.9 * mm)),
      make('valveSpring', springForm(springs.valveCoil, 'plainSteel', 0)),
      make('bleedScrew', parts.form('bleedScrew', 'bleedSeal')),
      make('shim0', shim),
      make('shim1', shim),
      make('pumpNut1', nut),
      make('pumpNut2', nut),
      make('pipeAtPump', pipeNut),
      make('pipeAtInjector', pipeNut),
    ],
  };
}

/** A spring whole and cut, its wire hatched with lines `spacing` m apart (0 = drawn solid). */
function springForm(spring: Coil, paint: PaintId, spacing: number): PartForm {
  const whole = painted(spring.geometry, paint);
  return { whole, half: spring.half(), cut: hatched(spring.cut, Math.PI / 4, spacing) };
}

function springsOf(def: SetDefinition): { returnCoil: Coil; valveCoil: Coil } {
  const r = dimsOf(def, 'returnSpring');
  const v = dimsOf(def, 'valveSpring');
  return {
    returnCoil: coil({ wire: r('wire'), mean: r('meanDiameter'), coils: r('coils') }, springRoom(def)),
    valveCoil: coil(
      { wire: v('wire'), mean: v('meanDiameter'), coils: v('coils'), perCoil: 12 },
      v('length'),
    ),
  };
}
