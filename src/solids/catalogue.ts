import type { Manifold } from 'manifold-3d';
import type { Definition } from './definition.ts';
import { mm } from './definition.ts';
import type { Shop } from './kernel.ts';
import { bodySolid } from './parts/body.ts';
import { camshaftSolid, forkSolid } from './parts/drive.ts';
import {
  coverScrewSolid,
  flangeNutSolid,
  flangeWasherSolid,
  studSolid,
  windowCoverSolid,
} from './parts/fixings.ts';
import { barrelSolid, cupSolid, retainerSolid, shimSolid, springPlateSolid } from './parts/inside.ts';
import { needleSolid, nozzleSolid } from './parts/nozzle.ts';
import {
  bleedScrewSolid,
  bleedSealSolid,
  holderSolid,
  inletSealSolid,
  inletSolid,
  pipeConeSolid,
  pipeNutSolid,
  valveSeatSolid,
  valveSolid,
} from './parts/outlet.ts';
import { pinSolid, plungerSolid } from './parts/plunger.ts';
import { returnSpringSpec, springFree, springSolid, valveSpringSpec } from './parts/springs.ts';

/** How a cut face is hatched: angle rad, spacing m (0 = thin part, drawn solid), lighter for the lapped pair. */
export type Hatch = { readonly angle: number; readonly spacing: number; readonly light?: boolean };

/** One solid: what it is made of, how many holes go through it, and how its section is hatched where it has one. */
export type SolidSpec = {
  readonly id: string;
  readonly material: keyof Definition['materials'];
  /** Handles of the closed surface: 0 a ball, 1 a ring; each opening joined to the others inside adds one. */
  readonly genus: number;
  readonly hatch?: Hatch;
  /** The bench bends its springs itself, and shows no nozzle by itself. */
  readonly notBaked?: boolean;
  readonly build: (shop: Shop, def: Definition) => Manifold;
};

const RIGHT = Math.PI / 4;
const LEFT = -Math.PI / 4;
const SOLID: Hatch = { angle: 0, spacing: 0 };

/** Every solid of the pump, its drive and its nozzle, each in its own frame (the pump's where it has no other). */
export const catalogue: readonly SolidSpec[] = [
  // main bore, two stud slots, window, inlet, bleed drilling
  {
    id: 'pumpBody',
    material: 'castIron',
    genus: 6,
    hatch: { angle: RIGHT, spacing: 1.5 * mm },
    build: bodySolid,
  },
  { id: 'windowCover', material: 'steel', genus: 2, build: windowCoverSolid },
  { id: 'coverScrew1', material: 'steel', genus: 0, build: (shop, def) => coverScrewSolid(shop, def, -1) },
  { id: 'coverScrew2', material: 'steel', genus: 0, build: (shop, def) => coverScrewSolid(shop, def, 1) },
  // bore, feed port, spill port
  {
    id: 'barrel',
    material: 'steel',
    genus: 3,
    hatch: { angle: LEFT, spacing: 0.9 * mm, light: true },
    build: barrelSolid,
  },
  { id: 'plunger', material: 'steel', genus: 0, build: plungerSolid },
  { id: 'pin', material: 'steel', genus: 0, build: pinSolid },
  { id: 'cup', material: 'steel', genus: 0, hatch: { angle: LEFT, spacing: 1.1 * mm }, build: cupSolid },
  { id: 'retainer', material: 'steel', genus: 2, hatch: SOLID, build: retainerSolid },
  { id: 'springPlate', material: 'steel', genus: 1, hatch: SOLID, build: springPlateSolid },
  {
    id: 'returnSpring',
    material: 'steel',
    genus: 0,
    notBaked: true,
    build: (shop, def) => springSolid(shop, returnSpringSpec(def), springFree(def), 'phosphate'),
  },
  {
    id: 'valveSeat',
    material: 'steel',
    genus: 1,
    hatch: { angle: RIGHT, spacing: 0.8 * mm, light: true },
    build: valveSeatSolid,
  },
  { id: 'valve', material: 'steel', genus: 0, build: valveSolid },
  {
    id: 'valveSpring',
    material: 'steel',
    genus: 0,
    notBaked: true,
    build: (shop, def) =>
      springSolid(shop, valveSpringSpec(def), def.shapes.valveSpring.length, 'plainSteel'),
  },
  {
    id: 'holder',
    material: 'steel',
    genus: 1,
    hatch: { angle: LEFT, spacing: 1.3 * mm },
    build: holderSolid,
  },
  { id: 'inlet', material: 'brass', genus: 1, hatch: { angle: LEFT, spacing: 1.1 * mm }, build: inletSolid },
  { id: 'inletSeal', material: 'brass', genus: 1, hatch: SOLID, build: inletSealSolid },
  { id: 'bleedScrew', material: 'steel', genus: 0, build: bleedScrewSolid },
  { id: 'bleedSeal', material: 'brass', genus: 1, build: bleedSealSolid },
  // pump's bore with the fork's channel, two stud holes
  { id: 'shim', material: 'steel', genus: 3, hatch: SOLID, build: shimSolid },
  { id: 'flangeNut', material: 'steel', genus: 1, build: flangeNutSolid },
  { id: 'flangeWasher', material: 'steel', genus: 1, build: flangeWasherSolid },
  { id: 'stud', material: 'steel', genus: 0, build: studSolid },
  {
    id: 'pipeNut',
    material: 'steel',
    genus: 1,
    hatch: { angle: LEFT, spacing: 1.3 * mm },
    build: pipeNutSolid,
  },
  { id: 'pipeCone', material: 'steel', genus: 1, build: pipeConeSolid },
  { id: 'fork', material: 'steel', genus: 1, build: forkSolid },
  { id: 'camshaft', material: 'steel', genus: 0, build: camshaftSolid },
  // guide, feed and four spray holes all meet inside
  { id: 'nozzle', material: 'steel', genus: 5, notBaked: true, build: nozzleSolid },
  { id: 'needle', material: 'steel', genus: 0, notBaked: true, build: needleSolid },
];
