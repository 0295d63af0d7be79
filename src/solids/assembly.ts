import type { Manifold } from 'manifold-3d';
import { camRise } from './camLaw.ts';
import { type Definition, mm } from './definition.ts';
import { nutFoot } from './parts/fixings.ts';
import { PIPE_LOW, PIPE_NUT_LOW } from './parts/outlet.ts';
import { middleTurn } from './parts/plunger.ts';
import { returnSpringSpec, springRoom, springSolid, valveSpringSpec } from './parts/springs.ts';
import type { Solids } from './solids.ts';

/** One moment of the assembled pump: cam angle from the nose and turn of the plunger, rad; lift of the valve, m. */
export type Moment = { readonly camAngle: number; readonly turn: number; readonly valveLift: number };

/** A part where it stands in the pump's frame. */
export type Placed = { readonly name: string; readonly shape: Manifold };

const DEGREES = 180 / Math.PI;

/** Moments at which the parts are tried against one another: base circle, flanks, port closure, nose; stop to start. */
export function moments(def: Definition): Moment[] {
  const start = 2 * middleTurn(def);
  const opened = 1.5 * mm;
  return [
    { camAngle: Math.PI, turn: 0, valveLift: 0 },
    { camAngle: -0.9, turn: start / 2, valveLift: 0 },
    { camAngle: -0.6, turn: start, valveLift: opened / 2 },
    { camAngle: -0.3, turn: start, valveLift: opened },
    { camAngle: 0, turn: start / 3, valveLift: 0 },
    { camAngle: 0.45, turn: 0, valveLift: 0 },
  ];
}

/** The parts that stand still, in the pump's frame, nominal shims under the flange. */
export function standing(solids: Solids): Placed[] {
  return [...fitted(solids), ...fastened(solids)];
}

function fitted(solids: Solids): Placed[] {
  const { body } = solids.def.shapes;
  const still = ['pumpBody', 'barrel', 'retainer', 'valveSeat', 'holder', 'inlet', 'inletSeal'];
  const cover = ['windowCover', 'coverScrew1', 'coverScrew2'].map((name) => ({
    name,
    shape: solids.of(name).shape.translate(0, body.windowFromCamEnd + body.windowHeight / 2, body.windowFace),
  }));
  const bleed = ['bleedScrew', 'bleedSeal'].map((name) => ({
    name,
    shape: solids
      .of(name)
      .shape.translate(0, body.upperRadius, 0)
      .rotate(90, 0, 0)
      .rotate(0, -45, 0)
      .translate(0, body.inletHeight, 0),
  }));
  return [...still.map((name) => ({ name, shape: solids.of(name).shape })), ...cover, ...bleed];
}

function fastened({ def, of }: Solids): Placed[] {
  const { body, shim, stud, holder } = def.shapes;
  const deck = body.flangeFromCamEnd - def.pump.nominalShim;
  const sides = [-1, 1].flatMap((side) => {
    const at = (name: string, y: number): Placed => ({
      name: `${name} ${side < 0 ? 'left' : 'right'}`,
      shape: of(name).shape.translate((side * body.studSpacing) / 2, deck + y, 0),
    });
    return [
      at('stud', 0),
      at('flangeWasher', nutFoot(def) - stud.washerHeight),
      at('flangeNut', nutFoot(def)),
    ];
  });
  const shims = Array.from({ length: shim.count }, (_, i) => ({
    name: `shim ${i + 1}`,
    shape: of('shim').shape.translate(0, deck + i * shim.thickness, 0),
  }));
  const nut = {
    name: 'pipeNut',
    shape: of('pipeNut').shape.translate(0, holder.from + holder.length - PIPE_NUT_LOW, 0),
  };
  const cone = {
    name: 'pipeCone',
    shape: of('pipeCone').shape.translate(0, holder.from + holder.length - PIPE_LOW, 0),
  };
  return [...sides, ...shims, nut, cone];
}

/** The parts that move, where they are at a moment, in the pump's frame. */
export function moving({ def, of, shop }: Solids, { camAngle, turn, valveLift }: Moment): Placed[] {
  const { cup, pin, fork, returnSpring, valveSpring } = def.shapes;
  const travel = camRise(def, camAngle > Math.PI ? camAngle - 2 * Math.PI : camAngle).lift;
  const pinTurn = turn - middleTurn(def);
  const sideways = fork.radius * Math.sin(pinTurn);
  // The slot follows the pin along the stroke: its linkage gives.
  const forkTurn = -Math.asin(sideways / (fork.pivotBelow + pin.height + travel));
  const up = (name: string): Placed => ({ name, shape: of(name).shape.translate(0, travel, 0) });
  const spring = springSolid(shop, returnSpringSpec(def), springRoom(def) - travel, 'phosphate');
  const small = springSolid(shop, valveSpringSpec(def), valveSpring.length - valveLift, 'plainSteel');
  return [
    up('cup'),
    up('springPlate'),
    {
      name: 'plunger',
      shape: of('plunger')
        .shape.rotate(0, turn * DEGREES, 0)
        .translate(0, travel, 0),
    },
    {
      name: 'pin',
      shape: of('pin')
        .shape.rotate(0, pinTurn * DEGREES, 0)
        .translate(0, travel + pin.height, 0),
    },
    { name: 'returnSpring', shape: spring.translate(0, returnSpring.installedFrom + travel, 0) },
    { name: 'valve', shape: of('valve').shape.translate(0, valveLift, 0) },
    { name: 'valveSpring', shape: small.translate(0, valveSpring.from + valveLift, 0) },
    {
      name: 'camshaft',
      shape: of('camshaft')
        .shape.rotate(camAngle * DEGREES, 0, 0)
        .translate(0, -cup.proud - def.cam.baseRadius, 0),
    },
    {
      name: 'fork',
      shape: of('fork')
        .shape.rotate(0, 0, forkTurn * DEGREES)
        .translate(0, -fork.pivotBelow, 0),
    },
  ];
}
