import { type BufferGeometry, type Material, Vector3 } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { needleAt, needleForm, needleTurn, panelFace, voltsAt } from '../engine/panel.ts';
import { dimsOf } from '../form/dims.ts';
import { revolve } from '../form/revolve.ts';
import type { Spot } from '../form/tube.ts';
import { type Flow, flowMaterial } from '../look/flow.ts';
import { clear, painted } from '../look/paints.ts';
import { GLAND } from '../place/loadBoard.ts';
import {
  bubbleForm,
  defendersForm,
  dripTrayForm,
  dropForm,
  extinguisherForm,
  glassesForm,
  lensForm,
  plugForm,
  poolForm,
} from '../place/safety.ts';
import { pipeTubes } from './lines.ts';
import { linkage } from './linkage.ts';
import { type Piece, pieceOf } from './piece.ts';
import { copyPose, type Pose, pose, within } from './pose.ts';
import type { Frame } from './posePump.ts';
import type { Rig } from './rig.ts';
import { onSet } from './setPieces.ts';
import { LOAD_BOARD_AT, SET_AT } from './spots.ts';

/** What is there or not after the state of the place and the fuel: shown and hidden, hardly moved. */
export type Shown = {
  readonly pieces: readonly Piece[];
  readonly lineFlow: Flow;
  readonly chamberFlow: Flow;
  /** Sets everything for one frame. */
  show(rig: Rig, f: Frame): void;
};

/** Builds the things of the place, the drops and bubbles, and the fuel that a section shows in its passages. */
export function shownThings(def: SetDefinition, solid: Material, glass: Material): Shown {
  const socket = socketAt(def);
  const line = flowMaterial();
  const chamber = flowMaterial();
  const tubes = pipeTubes(def);
  const make = (id: string, form: Parameters<typeof pieceOf>[1], material = solid): Piece =>
    pieceOf(id, form, material);
  const r = def.pump.plungerDiameter / 2 - 1e-4;
  const column = revolve(
    [
      [0, 0, 0],
      [r, 0, 0],
      [r, 1, 0],
      [0, 1, 0],
    ],
    { segments: 20, chamfer: 0 },
  );
  const gland: Spot = [LOAD_BOARD_AT.x + GLAND.x, GLAND.y, LOAD_BOARD_AT.z + GLAND.z];
  // Both ways the cable comes down on the bench and runs back to the gland of the load's board.
  const from = (plug: Pose, world: readonly Spot[]): Spot[] => {
    const back = plug.q.clone().invert();
    return [...world, [gland[0], 0.02, gland[2] - 0.004] as const, gland].map((at): Spot => {
      const own = new Vector3(...at).sub(plug.p).applyQuaternion(back);
      return [own.x, own.y, own.z];
    });
  };
  const onWay = from(socket, [
    [socket.p.x + 0.004, 0.165, 0.145],
    [socket.p.x + 0.03, 0.05, 0.165],
    [0.02, 0.0055, 0.142],
    [0.11, 0.0045, 0.135],
    [0.168, 0.0045, 0.08],
    [0.178, 0.0045, -0.06],
    [0.18, 0.0045, -0.24],
    [gland[0], 0.0045, -0.33],
  ]);
  const loose = pose(0.182, 0.0195, 0.07, 0, Math.PI - 0.45);
  const offWay = from(loose, [
    [0.211, 0.012, 0.008],
    [0.214, 0.005, -0.03],
    [0.2, 0.0045, -0.11],
    [0.184, 0.0045, -0.23],
    [gland[0], 0.0045, -0.33],
  ]);
  const pieces = {
    plugIn: make('plug', plugForm(onWay)),
    plugOut: make('plug', plugForm(offWay)),
    extinguisher: make('extinguisher', extinguisherForm()),
    dripTray: make('dripTray', dripTrayForm()),
    glasses: make('glasses', glassesForm()),
    lenses: make('glasses', clear(lensForm(), 0.16), glass),
    defenders: make('defenders', defendersForm()),
    pool: make('pool', clear(poolForm(), 0.62), glass),
    pipeGlass: make('pipe', clear(painted(tubes.outer, 'white'), 0.14), glass),
    pipeFlow: make('pipe', tubes.inner, line.material),
    chamber: make('plunger', column, chamber.material),
    holderFlow: make('holder', holderRoom(def), line.material),
    dropPump: make('pipeAtPump', dropForm(), glass),
    dropInjector: make('pipeAtInjector', dropForm(), glass),
    bubblePump: make('pipeAtPump', clear(bubbleForm(), 0.5), glass),
    bubbleInjector: make('pipeAtInjector', clear(bubbleForm(), 0.5), glass),
  };
  const governor = linkage(def, solid);
  const needle = make('generator', needleForm());
  const pivot = onSet(needleAt(def));
  const at = pose();
  return {
    pieces: [...Object.values(pieces), ...governor.pieces, needle],
    lineFlow: line.flow,
    chamberFlow: chamber.flow,
    show(rig, f) {
      const { place, assembly, supply } = f.sim;
      governor.show(f);
      const share = Math.abs(f.sim.engine.omega) / def.governor.ratedSpeed;
      turned.p.copy(pivot.p);
      turned.q.setFromAxisAngle(Z, needleTurn(voltsAt(share)));
      stand(needle, turned, true);
      stand(pieces.plugIn, socket, !place.loadIsolated);
      stand(pieces.plugOut, loose, place.loadIsolated);
      stand(pieces.extinguisher, pose(0.9, 0, -0.28, 0, -0.5), place.extinguisher);
      stand(pieces.dripTray, onSet([0.02, 0.0005, 0.17]), place.trayUnder);
      stand(pieces.glasses, GLASSES_AT, !place.eyeProtection);
      stand(pieces.lenses, GLASSES_AT, !place.eyeProtection);
      stand(pieces.defenders, DEFENDERS_AT, !place.hearingProtection);
      const pooled = Math.sqrt(supply.spilledOutside / 0.0006 / Math.PI);
      stand(pieces.pool, pose(SET_AT.x + 0.05, 0.0003, SET_AT.z + 0.155), pooled > 0.003);
      pieces.pool.group.scale.set(Math.min(0.12, pooled), 1, Math.min(0.068, pooled));
      showFuel(rig, f, pieces, line.flow, chamber.flow);
      for (const [id, drop, bubble] of [
        ['pipeAtPump', pieces.dropPump, pieces.bubblePump],
        ['pipeAtInjector', pieces.dropInjector, pieces.bubbleInjector],
      ] as const) {
        const { seenFuel, seenAir } = f.sim.line;
        const weeps =
          assembly.joints[id].at === 'slack' && assembly.parts.pipe === 'fitted' && f.apart < 0.02;
        at.p.copy(rig.piece(id).now.p);
        at.q.identity();
        at.p.add(below);
        stand(drop, at, weeps && seenFuel > 1e-10);
        at.p.add(beside);
        stand(bubble, at, weeps && seenAir > 1e-10);
      }
    },
  };
}

const GLASSES_AT = pose(0.17, 0, 0.3, 0, 0.35);
const DEFENDERS_AT = pose(-0.72, 0, 0.16, 0, 0.5);
const turned = pose();
const Z = new Vector3(0, 0, 1);
const below = new Vector3(0, -0.002, 0.0095);
const beside = new Vector3(0.004, 0.003, 0.001);

type Fuel = {
  readonly pipeGlass: Piece;
  readonly pipeFlow: Piece;
  readonly chamber: Piece;
  readonly holderFlow: Piece;
};

/** In a section the pipe is seen through and the chamber over the plunger shows what presses on its fuel. */
function showFuel(rig: Rig, f: Frame, pieces: Fuel, line: Flow, chamber: Flow): void {
  const { def, sim } = f;
  const { parts } = sim.assembly;
  const full = def.injector.openingPressure;
  const share = (p: number): number => Math.min(1, Math.max(0, (p - 101_325) / full));
  line.pressure.value = share(sim.line.pressure);
  line.air.value = Math.min(1, sim.line.air / def.line.volume);
  chamber.pressure.value = share(sim.pump.pressure);
  chamber.air.value = Math.min(1, sim.pump.air / def.pump.chamberVolume);
  const seen = f.section && f.apart < 0.02;
  const pipe = rig.piece('pipe');
  const lined = seen && parts.pipe === 'fitted' && pipe.done >= 1;
  if (lined) pipe.group.visible = false;
  stand(pieces.pipeGlass, pipe.now, lined);
  stand(pieces.pipeFlow, pipe.now, lined);
  stand(
    pieces.holderFlow,
    rig.piece('holder').now,
    seen && parts.holder === 'fitted' && parts.valve === 'fitted',
  );
  const d = dimsOf(def, 'plunger');
  const low = d('to') + f.reading.travel;
  const body = rig.piece('pumpBody');
  within(inner, body.now, copyPose(rise, pose(0, low, 0)));
  stand(pieces.chamber, inner, seen && parts.plunger === 'fitted' && parts.valve === 'fitted');
  pieces.chamber.group.scale.set(1, Math.max(1e-4, dimsOf(def, 'barrel')('to') - low), 1);
}

/** Radius of the drilling from the holder's room to its outlet, m. */
const DRILLING = 0.0009;

/** What fills holder and drilling above the delivery valve: laid flat behind the valve and its spring, to be seen past them. */
function holderRoom(def: SetDefinition): BufferGeometry {
  const h = dimsOf(def, 'holder');
  const v = dimsOf(def, 'valveSpring');
  const r = h('boreRadius') - 2e-4;
  const [low, top, end] = [h('from') + 2e-4, v('from') + v('length'), h('from') + h('length') - 1e-3];
  return revolve(
    [
      [0, low, 0],
      [r, low, 0],
      [r, top, 0],
      [DRILLING, top, 0],
      [DRILLING, end, 0],
      [0, end, 0],
    ],
    { segments: 16, chamfer: 0 },
  )
    .scale(1, 1, 0.04)
    .translate(0, 0, -0.5 * r);
}

const inner = pose();
const rise = pose();

function stand(piece: Piece, at: Pose, on: boolean): void {
  piece.group.visible = on;
  piece.group.position.copy(at.p);
  piece.group.quaternion.copy(at.q);
  copyPose(piece.now, at);
}

/** The left socket of the control box, as a plug stands in it. */
function socketAt(def: SetDefinition): Pose {
  const [x, y, z] = panelFace(def);
  return onSet([x - 0.042, y + 0.012, z + 0.005]);
}
