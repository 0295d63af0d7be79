import type { SetDefinition } from '../../sim/set/definition.ts';
import { type Coil, coil } from '../form/coil.ts';
import { type Dims, dimsOf } from '../form/dims.ts';
import { painted } from '../look/paints.ts';
import { bodyForm } from '../pump/body.ts';
import { barrelForm, cupForm, pinForm, retainerForm, shimForm, springPlateForm } from '../pump/inside.ts';
import {
  bleedScrewForm,
  flangeNutForm,
  holderForm,
  pipeNutForm,
  valveForm,
  valveSeatForm,
} from '../pump/outlet.ts';
import { plungerForm } from '../pump/plunger.ts';
import { windowCoverForm } from '../pump/window.ts';
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

/** Every part of the pump and its fixings. */
export function pumpPieces(def: SetDefinition, material: Materials): PumpPieces {
  const body = dimsOf(def, 'body');
  const plunger = dimsOf(def, 'plunger');
  const cup = dimsOf(def, 'cup');
  const valve = dimsOf(def, 'deliveryValve');
  const pipe = dimsOf(def, 'pipe');
  const radius = def.pump.plungerDiameter / 2;
  const helix = { radius, tangent: def.pump.helixTangent, portHeight: dimsOf(def, 'barrel')('portDiameter') };
  const springs = springsOf(def);
  const make = (id: string, form: Parameters<typeof pieceOf>[1]): Piece => pieceOf(id, form, material);
  return {
    ...springs,
    pieces: [
      make('pumpBody', bodyForm(body, dimsOf(def, 'inlet'))),
      make('windowCover', windowCoverForm(body)),
      make('barrel', barrelForm(dimsOf(def, 'barrel'), radius)),
      make('plunger', plungerForm(plunger, plungerFoot(cup), helix)),
      make('pin', pinForm(dimsOf(def, 'pin'))),
      make('cup', cupForm(cup)),
      make('retainer', retainerForm(dimsOf(def, 'retainer'))),
      make('springPlate', springPlateForm(dimsOf(def, 'springPlate'))),
      make('returnSpring', painted(springs.returnCoil.geometry, 'phosphate')),
      make('valveSeat', valveSeatForm(valve)),
      make('valve', valveForm(valve)),
      make('valveSpring', painted(springs.valveCoil.geometry, 'plainSteel')),
      make('holder', holderForm(dimsOf(def, 'holder'))),
      make('bleedScrew', bleedScrewForm(dimsOf(def, 'bleedScrew'))),
      make('shim0', shimForm(body, dimsOf(def, 'shim')('thickness'))),
      make('shim1', shimForm(body, dimsOf(def, 'shim')('thickness'))),
      make('pumpNut1', flangeNutForm(dimsOf(def, 'stud'))),
      make('pumpNut2', flangeNutForm(dimsOf(def, 'stud'))),
      make('pipeAtPump', pipeNutForm(pipe)),
      make('pipeAtInjector', pipeNutForm(pipe)),
    ],
  };
}

function springsOf(def: SetDefinition): { returnCoil: Coil; valveCoil: Coil } {
  const r = dimsOf(def, 'returnSpring');
  const v = dimsOf(def, 'valveSpring');
  return {
    returnCoil: coil({ wire: r('wire'), mean: r('meanDiameter'), coils: r('coils') }, springRoom(def)),
    valveCoil: coil(
      { wire: v('wire'), mean: v('meanDiameter'), coils: v('coils'), perCoil: 10 },
      v('length'),
    ),
  };
}
