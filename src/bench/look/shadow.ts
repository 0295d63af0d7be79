import {
  Color,
  Matrix4,
  NearestFilter,
  OrthographicCamera,
  type Scene,
  ShaderMaterial,
  Vector3,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import type { SharedUniforms } from './surface.ts';

/** Objects on this layer throw shadows. */
export const CASTS = 1;

const TOWARDS_WINDOW = new Vector3(-2.3, 1.95, 0.95).normalize();
const BIAS = new Matrix4().set(0.5, 0, 0, 0.5, 0, 0.5, 0, 0.5, 0, 0, 0.5, 0.5, 0, 0, 0, 1);

export type WindowShadow = {
  /** Draws the shadow map for a ball of `radius` m about `centre`. */
  draw(gl: WebGLRenderer, scene: Scene, centre: Vector3, radius: number): void;
  /** How strongly the shadow shows from now on, 0..1. */
  show(strength: number): void;
  dispose(): void;
};

/** One shadow map for the window's light, drawn only when asked, with the depth test done by the sampler. */
export function windowShadow(shared: SharedUniforms, size = 1024): WindowShadow {
  const target = new WebGLRenderTarget(size, size, { magFilter: NearestFilter, minFilter: NearestFilter });
  const depth = target.texture;
  const camera = new OrthographicCamera(-1, 1, 1, -1, 0.1, 6);
  camera.layers.set(CASTS);
  const flat = new ShaderMaterial({
    vertexShader: 'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    // The depth in two bytes: a plain colour texture is read many times faster than a depth texture in software.
    fragmentShader:
      'void main() { float d = gl_FragCoord.z * 255.0; gl_FragColor = vec4(floor(d) / 255.0, fract(d), 0.0, 1.0); }',
    polygonOffset: true,
    polygonOffsetFactor: 2,
    polygonOffsetUnits: 4,
  });
  shared.shadowMap.value = depth;
  shared.shadowTexel.value = 1 / size;
  const white = new Color(1, 1, 1);
  const state = { isDrawn: false, strength: 1 };
  return {
    draw(gl, scene, centre, radius) {
      camera.position.copy(centre).addScaledVector(TOWARDS_WINDOW, 3);
      camera.lookAt(centre);
      camera.left = -radius;
      camera.right = radius;
      camera.top = radius;
      camera.bottom = -radius;
      camera.updateProjectionMatrix();
      camera.updateMatrixWorld();
      shared.shadowMatrix.value
        .copy(BIAS)
        .multiply(camera.projectionMatrix)
        .multiply(camera.matrixWorldInverse);
      // The map must not be read while it is being written.
      shared.shadowMap.value = null;
      const background = scene.background;
      scene.background = white;
      scene.overrideMaterial = flat;
      gl.setRenderTarget(target);
      gl.clear();
      gl.render(scene, camera);
      gl.setRenderTarget(null);
      scene.overrideMaterial = null;
      scene.background = background;
      shared.shadowMap.value = depth;
      shared.shadowOn.value = state.strength;
      state.isDrawn = true;
    },
    show(strength) {
      state.strength = strength;
      if (state.isDrawn) shared.shadowOn.value = strength;
    },
    dispose() {
      target.dispose();
      flat.dispose();
    },
  };
}
