import { Vector3 } from 'three';
import type { PartId, RestId } from '../../sim/set/commands.ts';
import { dimsOf } from '../form/dims.ts';
import { nameOfPiece } from '../names.ts';
import { onSet } from '../rig/setPieces.ts';
import { ANVIL_AT, CLOTH_AT, HAND_AT, TRAY_AT, VICE_AT } from '../rig/spots.ts';
import { draggedAlong, drawnAway, type Gesture, type Hands, onScreen, type Point } from './gesture.ts';
import { middleOf } from './spanner.ts';

/** Parts that a hand takes off, by the piece that is taken hold of. */
const partOfPiece: Readonly<Record<string, PartId>> = {
  windowCover: 'windowCover',
  airCover: 'airCover',
  hose: 'hose',
  pipe: 'pipe',
  pipeAtPump: 'pipe',
  pipeAtInjector: 'pipe',
  pumpBody: 'pump',
  shim0: 'shims',
  shim1: 'shims',
  holder: 'holder',
  valveSpring: 'valveSpring',
  valve: 'valve',
  valveSeat: 'valve',
  retainer: 'retainer',
  cup: 'cup',
  returnSpring: 'returnSpring',
  springPlate: 'returnSpring',
  plunger: 'plunger',
};

/** The part that a hand would take off by a piece, or null. */
export function partAt(piece: string): PartId | null {
  return partOfPiece[piece] ?? null;
}

const OFF_AFTER = 54;
const NEAR = 120;

/** Takes a part off by drawing it away, or puts a part that lies about back by drawing it home. */
export function carryPart(hands: Hands, piece: string, part: PartId, start: Point): Gesture {
  const { session, rig, held } = hands;
  const fitted = session.sim().assembly.parts[part] === 'fitted';
  const middle = middleOf(rig.piece(piece));
  const name = (part === 'pump' ? 'the pump' : `the ${(nameOfPiece(piece) ?? part).toLowerCase()}`).replace(
    'injection ',
    '',
  );
  const windowOpen = session.sim().assembly.parts.windowCover !== 'fitted';
  const isRing = part === 'retainer';
  const words = (far: boolean, shift: boolean): string => {
    if (!far) return fitted ? `draw it away to take ${name} off` : `draw it home to fit ${name}`;
    const cup = isRing ? (shift ? ', the cup held' : ', nothing holding the cup') : '';
    const pin = part === 'pump' && windowOpen ? ', the pin led through the window' : '';
    return (fitted ? `take ${name} off` : `fit ${name}`) + cup + pin;
  };
  const isFar = (point: Point): boolean =>
    fitted
      ? Math.hypot(point.x - start.x, point.y - start.y) > OFF_AFTER
      : distanceTo(hands, homeOf(hands, part), point) < NEAR;
  return {
    move(point) {
      held.part = part === 'pump' ? 'pumpBody' : piece;
      if (fitted && part === 'pump') held.offset.copy(liftOnly(hands, middle, point, start));
      else drawnAway(hands, middle, point.x - start.x, point.y - start.y, held.offset);
      held.words = words(isFar(point), point.shift);
      hands.invalidate();
    },
    end(point) {
      if (!isFar(point)) return;
      const guide = part === 'pump' ? { guidePin: windowOpen } : {};
      const grip = isRing ? { held: point.shift } : {};
      if (fitted) session.do({ do: 'remove', part, ...guide, ...grip });
      else session.do({ do: 'fit', part, ...guide, ...grip });
    },
  };
}

/** The pump comes off along its axis and no other way. */
function liftOnly(hands: Hands, middle: Vector3, point: Point, start: Point): Vector3 {
  const up = new Vector3(0, 1, 0);
  const by = draggedAlong(hands, middle, up, point.x - start.x, point.y - start.y);
  return up.multiplyScalar(Math.max(0, Math.min(0.12, by)));
}

const restWords: Readonly<Record<RestId, string>> = {
  hand: 'in the hand',
  cloth: 'on the folded cloth',
  anvil: 'on the anvil',
  vice: 'in the vice, soft jaws on the flange',
  viceBody: 'in the vice, jaws on the body',
  tray: 'in the tray',
};

/** Carries the loose pump to another rest, or back to the engine. */
export function carryPump(hands: Hands, start: Point): Gesture {
  const { session, rig, held } = hands;
  const middle = middleOf(rig.piece('pumpBody'));
  const places: readonly (readonly [RestId | 'engine', Vector3])[] = [
    ['hand', new Vector3(HAND_AT.x, HAND_AT.y + 0.05, HAND_AT.z)],
    ['cloth', new Vector3(CLOTH_AT.x, 0.05, CLOTH_AT.z)],
    ['anvil', new Vector3(ANVIL_AT.x, 0.09, ANVIL_AT.z)],
    ['vice', new Vector3(VICE_AT.x, 0.15, VICE_AT.z)],
    ['tray', new Vector3(TRAY_AT.x, 0.03, TRAY_AT.z)],
    ['engine', homeOf(hands, 'pump')],
  ];
  const target = (point: Point): RestId | 'engine' | null => {
    if (Math.hypot(point.x - start.x, point.y - start.y) < OFF_AFTER) return null;
    const [best] = places
      .filter(([place]) => place !== session.sim().pump.rest)
      .sort((a, b) => distanceTo(hands, a[1], point) - distanceTo(hands, b[1], point));
    if (best === undefined || distanceTo(hands, best[1], point) > 1.6 * NEAR) return null;
    return best[0] === 'vice' && point.shift ? 'viceBody' : best[0];
  };
  const windowOpen = (): boolean => session.sim().assembly.parts.windowCover !== 'fitted';
  return {
    move(point) {
      held.part = 'pumpBody';
      drawnAway(hands, middle, point.x - start.x, point.y - start.y, held.offset);
      const to = target(point);
      if (to === null) held.words = 'carry it to the cloth, the anvil, the vice, the tray or the engine';
      else
        held.words =
          to === 'engine'
            ? `fit the pump${windowOpen() ? ', the pin led through the window' : ''}`
            : restWords[to];
      hands.invalidate();
    },
    end(point) {
      const to = target(point);
      const { rest, camUp } = session.sim().pump;
      if (to === null || to === rest) return;
      if (to === 'engine') session.do({ do: 'fit', part: 'pump', guidePin: windowOpen() });
      else session.do({ do: 'placePump', on: to, camUp });
      held.blockOn = null;
    },
  };
}

/** Turns the loose pump end for end where it lies. */
export function turnOver(hands: Pick<Hands, 'session' | 'held'>): void {
  const { rest, camUp } = hands.session.sim().pump;
  if (rest === null) return;
  hands.held.blockOn = null;
  hands.session.do({ do: 'placePump', on: rest, camUp: !camUp });
}

/** Where a part belongs, in the world. */
function homeOf(hands: Hands, part: PartId): Vector3 {
  const def = hands.session.definition;
  const deck = dimsOf(def, 'deck');
  const onEngine: readonly PartId[] = ['pump', 'shims', 'pipe'];
  if (onEngine.includes(part)) return onSet([deck('side'), deck('height') + 0.05, deck('front')]).p;
  if (part === 'hose') return onSet([deck('side') + 0.04, deck('height') + 0.055, deck('front')]).p;
  if (part === 'airCover') return onSet([0.128, 0.402, 0.03]).p;
  return middleOf(hands.rig.piece('pumpBody'));
}

function distanceTo(hands: Hands, place: Vector3, point: Point): number {
  const at = onScreen(hands, place);
  return Math.hypot(at.x - point.x, at.y - point.y);
}
