import type { Camera, Scene, WebGLRenderer } from 'three';
import { type Object3D, Vector3 } from 'three';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { dimsOf } from '../form/dims.ts';
import type { Rig } from '../rig/rig.ts';
import { type Item, items, itemsFor, KEPT_CLEAR, PORT } from './items.ts';
import { type Clear, type Placed, placeLabels, type Room, type Spot, type Wanted } from './layout.ts';
import { numberPass, placeAt } from './numberPass.ts';
import { type Pixel, spotsOf } from './seen.ts';

/** A label with the place on its part that it points at, in the part's own frame. */
export type Label = {
  readonly item: Item;
  readonly placed: Placed;
  readonly on: Object3D;
  readonly place: Vector3;
};
type Size = { readonly width: number; readonly height: number };
export type Looking = {
  readonly gl: WebGLRenderer;
  readonly scene: Scene;
  readonly camera: Camera;
  readonly size: Size;
};
/** A spot of an item in the picture and the thing that it lies on. */
type Sight = { readonly item: Item; readonly on: Object3D; readonly spots: readonly Spot[] };

/** Radius of what leaders keep away from, px. */
const CLEARANCE = 8;
/** How far something may stand before the port's middle and yet not hide it, m. */
const PORT_DEPTH = 0.0015;

/** Looks which parts are seen and where they may be pointed at. */
export type Surveyor = {
  /** Labels for a picture; `widthOf` is how wide a label is, px. */
  look(at: Looking, view: string, cut: boolean, room: Room, widthOf: (item: Item) => number): Label[];
  dispose(): void;
};

/** Makes the surveyor of one scene. */
export function surveyor(rig: Rig, def: SetDefinition): Surveyor {
  const pieces = items.flatMap((item) => item.pieces.map((piece) => ({ piece, item })));
  const pass = numberPass(rig, (id) => pieces.findIndex(({ piece }) => piece === id) + 1);
  const groups = pieces.map(({ piece }) =>
    rig.all.filter(({ id }) => id === piece).map(({ group }) => group),
  );
  const port = new Vector3(def.pump.plungerDiameter / 2 + 0.001, dimsOf(def, 'barrel')('portCentre'), 0);
  return {
    look(at, view, cut, room, widthOf) {
      const { gl, scene, camera, size } = at;
      const seen = pass.draw(gl, scene, camera, size);
      const toCss = ({ x, y }: Pixel): Spot => ({ x: (x + 0.5) * seen.ratio, y: (y + 0.5) * seen.ratio });
      const toPixel = ({ x, y }: Spot): Spot => ({
        x: Math.floor(x / seen.ratio),
        y: Math.floor(y / seen.ratio),
      });
      const found = spotsOf(seen, (x, y) => {
        const css = toCss({ x, y, depth: 0 });
        return css.x > room.left && css.x < room.right && css.y > room.top && css.y < room.bottom;
      });
      const sights: Sight[] = [];
      for (const item of itemsFor(view)) {
        const own = pieces.flatMap(({ item: one }, i) =>
          one === item ? (found.get(i + 1) ?? []).map((pixel) => ({ pixel, on: groups[i] })) : [],
        );
        own.sort((a, b) => b.pixel.depth - a.pixel.depth);
        const on = own[0]?.on?.find(({ visible }) => visible);
        if (on !== undefined) sights.push({ item, on, spots: own.map(({ pixel }) => toCss(pixel)) });
        if (item.number === PORT && cut) {
          const sight = portSight(item, rig.piece('barrel').group, port, at, (css) =>
            pass.distance(toPixel(css)),
          );
          if (sight !== null) sights.push(sight);
        }
      }
      const clear = sights.flatMap(({ item, spots: [spot] }): Clear[] =>
        spot !== undefined && KEPT_CLEAR.has(item.number)
          ? [{ ...spot, id: String(item.number), radius: CLEARANCE }]
          : [],
      );
      const wanted = sights.map(
        ({ item, spots }): Wanted => ({ id: String(item.number), spots, width: widthOf(item) }),
      );
      return placeLabels(wanted, room, clear).flatMap((placed): Label[] => {
        const sight = sights.find(({ item }) => String(item.number) === placed.id);
        if (sight === undefined) return [];
        const away = pass.distance(toPixel(placed.from));
        const place =
          sight.item.number === PORT
            ? port.clone()
            : sight.on.worldToLocal(placeAt(camera, placed.from, size, away));
        return [{ item: sight.item, placed, on: sight.on, place }];
      });
    },
    dispose: () => pass.dispose(),
  };
}

/** The port where nothing stands before it, or null. */
function portSight(
  item: Item,
  barrel: Object3D,
  port: Vector3,
  { camera, size }: Looking,
  seenAt: (css: Spot) => number,
): Sight | null {
  const place = barrel.localToWorld(port.clone());
  const away = place.clone().applyMatrix4(camera.matrixWorldInverse).z * -1;
  const p = place.project(camera);
  const spot = { x: ((p.x + 1) / 2) * size.width, y: ((1 - p.y) / 2) * size.height };
  if (Math.abs(p.x) > 1 || Math.abs(p.y) > 1 || seenAt(spot) < away - PORT_DEPTH) return null;
  return { item, on: barrel, spots: [spot] };
}
