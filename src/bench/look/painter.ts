import {
  BufferGeometry,
  Mesh,
  type Object3D,
  PerspectiveCamera,
  type Scene,
  type ShaderMaterial,
  type WebGLRenderer,
} from 'three';
import { coarseForms } from './coarseForms.ts';
import type { Fineness } from './quality.ts';
import { shadeSurfaces } from './surface.ts';

/** Draws the scene as finely as it is asked to. */
export type Painter = {
  draw(gl: WebGLRenderer, scene: Scene, camera: Object3D, fineness: Fineness): void;
  dispose(): void;
};

/** What is flat and painted on its vertices: fewer of them would lose the paint. */
const STAYS_WHOLE: ReadonlySet<string> = new Set(['wall', 'benchTop', 'cloth']);
/** So many times farther off may coarse forms be where shading is bare: with half the pixels the eye asks for less. */
const BARE_ROUGHER = 1.6;
/** Behind everything: drawn last, so that what is hidden is not shaded. */
const BEHIND = ['benchTop', 'wall'];

/** Seen where neither bench nor wall is. */
const ROOM = '#b9b2a6';

type Item = { readonly object: Object3D; readonly renderOrder: number; readonly z: number };

/** Prepares the drawing of what stands under `root` with the surfaces that can be shaded more or less richly. */
export function painter(root: Object3D, surfaces: readonly ShaderMaterial[]): Painter {
  const forms = coarseForms(root, STAYS_WHOLE);
  const behind = new Map<Object3D, number>();
  for (const piece of root.children) {
    const order = BEHIND.indexOf(piece.name) + 1;
    if (order > 0) piece.traverse((object) => behind.set(object, order));
  }
  const order = ({ object, renderOrder }: Item): number => renderOrder * 8 + (behind.get(object) ?? 0);
  // By distance alone: changing the material costs less than shading what is hidden afterwards.
  const nearestFirst = (a: Item, b: Item): number => order(a) - order(b) || a.z - b.z;
  let prepared: WebGLRenderer | null = null;
  return {
    draw(gl, scene, camera, fineness) {
      if (prepared !== gl) {
        gl.setOpaqueSort(nearestFirst);
        gl.setClearColor(ROOM);
        prepared = gl;
      }
      if (gl.getPixelRatio() !== fineness.ratio) gl.setPixelRatio(fineness.ratio);
      shadeSurfaces(surfaces, fineness.shade);
      if (!(camera instanceof PerspectiveCamera)) throw new Error('the bench is seen in perspective');
      const rougher = fineness.shade === 'bare' ? BARE_ROUGHER : 1;
      const pixel = (2 * rougher * Math.tan((camera.fov * Math.PI) / 360)) / gl.domElement.height;
      forms.show(fineness.coarse, camera.position, pixel);
      gl.render(scene, camera);
    },
    dispose() {
      forms.dispose();
      // A form that outlives the bench would keep every renderer that has drawn it.
      root.traverse((object) => {
        if (object instanceof Mesh && object.geometry instanceof BufferGeometry) object.geometry.dispose();
      });
      for (const surface of surfaces) surface.dispose();
    },
  };
}
