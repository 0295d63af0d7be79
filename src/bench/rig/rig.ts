import { Group, type Material } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Coil } from '../form/coil.ts';
import { dimsOf } from '../form/dims.ts';
import type { Parts } from '../parts/readParts.ts';
import { axisPiece, cordPiece, endCap, fuelPieces, hosePieces, pipePiece } from './lines.ts';
import { type Materials, type Piece, pieceOf } from './piece.ts';
import { placePieces, toolPieces } from './placePieces.ts';
import type { Pose } from './pose.ts';
import { pumpPieces } from './pumpPieces.ts';
import { setPieces } from './setPieces.ts';
import { type Shown, shownThings } from './shown.ts';

/** Everything in the scene by name, and what it needs to be moved. */
export type Rig = {
  readonly root: Group;
  readonly homes: ReadonlyMap<string, Pose>;
  readonly tools: ReadonlySet<string>;
  readonly coils: { readonly returnSpring: Coil; readonly valveSpring: Coil };
  readonly pipe: { readonly nutAtPump: Pose; readonly nutAtInjector: Pose };
  readonly fuel: ReturnType<typeof fuelPieces>;
  readonly hoses: ReturnType<typeof hosePieces>;
  readonly shown: Shown;
  /** The piece of a name; throws when there is none. */
  piece(id: string): Piece;
  readonly all: readonly Piece[];
};

/** Materials of the pump and its line, of what stands behind them, of glass, and of what shadows fall on. */
export type RigMaterials = {
  readonly front: Materials;
  readonly back: Materials;
  readonly glass: Material;
  readonly ground: Material;
};

/** Builds every part of the scene from the definition, the pump's from its baked parts. */
export function buildRig(def: SetDefinition, materials: RigMaterials, parts: Parts): Rig {
  const { back, glass, ground } = materials;
  const { solid } = materials.front;
  const root = new Group();
  const homes = new Map<string, Pose>();
  const byId = new Map<string, Piece>();
  const all: Piece[] = [];
  const add = (piece: Piece, home?: Pose): Piece => {
    if (!byId.has(piece.id)) byId.set(piece.id, piece);
    if (home !== undefined) homes.set(piece.id, home);
    all.push(piece);
    root.add(piece.group);
    return piece;
  };
  const pump = pumpPieces(def, materials.front, parts);
  for (const piece of pump.pieces) add(piece);
  for (const { piece, home } of setPieces(def, { near: materials.front, material: back }, parts))
    add(piece, home);
  for (const { piece, home } of placePieces(def, back.solid, ground)) add(piece, home);
  const tools = toolPieces(back.solid, def);
  for (const { piece, home } of tools) add(piece, home);
  const pipe = pipePiece(def, solid, parts);
  add(pipe.piece, pipe.home);
  const hoses = hosePieces(def, back.solid);
  add(hoses.on);
  add(hoses.off);
  add(cordPiece(back.solid));
  const fuel = fuelPieces(def, glass);
  for (const piece of Object.values(fuel)) add(piece);
  const outer = dimsOf(def, 'pipe')('outerDiameter') / 2;
  for (const id of ['coverPipe1', 'coverPipe2', 'coverHose', 'coverHolder'])
    add(pieceOf(id, endCap(id === 'coverHose' ? outer : 5e-3), solid));
  add(axisPiece(solid));
  const shown = shownThings(def, back.solid, glass);
  for (const piece of shown.pieces) add(piece);
  add(pieceOf('coverEngine', endCap(dimsOf(def, 'body')('pilotRadius')), solid));
  return {
    root,
    homes,
    tools: new Set(tools.map(({ piece }) => piece.id)),
    coils: { returnSpring: pump.returnCoil, valveSpring: pump.valveCoil },
    pipe,
    fuel,
    hoses,
    shown,
    all,
    piece(id) {
      const found = byId.get(id);
      if (found === undefined) throw new Error(`no piece ${id}`);
      return found;
    },
  };
}

/** What is drawn after all else: nearly everything stands before it. */
const LAST: Readonly<Record<string, number>> = { benchTop: 1, wall: 2 };

/** Puts everything that has a home there, before the first frame. */
export function standAtHome(rig: Rig): void {
  // Nearest first, so that what is hidden is not shaded: parts of the pump, then the set, bench and wall last.
  for (const piece of rig.all) {
    const order = LAST[piece.id] ?? (rig.homes.has(piece.id) ? 0 : -1);
    piece.group.traverse((object) => {
      object.renderOrder = order;
    });
  }
  for (const [id, home] of rig.homes) {
    const { group } = rig.piece(id);
    group.position.copy(home.p);
    group.quaternion.copy(home.q);
  }
}
