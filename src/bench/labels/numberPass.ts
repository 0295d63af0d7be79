import {
  type Camera,
  Color,
  Mesh,
  NearestFilter,
  type Object3D,
  type Scene,
  ShaderMaterial,
  Vector3,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import type { Rig } from '../rig/rig.ts';
import type { Seen } from './seen.ts';

/** Distances are written in 16 bits of this span, m. */
const FAR = 8;

/** A small picture of what is seen where: numbers instead of colours, and distances. */
export type NumberPass = {
  /** Draws it; `ratio` is CSS pixels a pixel. */
  draw(gl: WebGLRenderer, scene: Scene, camera: Camera, size: Size): Seen & { readonly ratio: number };
  /** Distance along the viewing direction of what was seen at a pixel, m. */
  distance(at: { readonly x: number; readonly y: number }): number;
  dispose(): void;
};
type Size = { readonly width: number; readonly height: number };

/** At most so many pixels wide. */
const WIDE = 470;

/** Makes the pass; pieces are numbered by `numberOf` their id, 0 for what only hides others. */
export function numberPass(rig: Rig, numberOf: (piece: string) => number): NumberPass {
  const material = numberMaterial();
  const { number } = material.uniforms;
  const target = new WebGLRenderTarget(1, 1, { minFilter: NearestFilter, magFilter: NearestFilter });
  for (const { id, group } of rig.all) {
    const own = numberOf(id);
    group.traverse((object: Object3D) => {
      if (!(object instanceof Mesh)) return;
      object.onBeforeRender = (_gl, _scene, _camera, _geometry, used) => {
        if (used !== material || number === undefined) return;
        number.value = own;
        material.uniformsNeedUpdate = true;
      };
    });
  }
  const axis = rig.piece('axis').group;
  let bytes = new Uint8Array(4);
  return {
    draw(gl, scene, camera, size) {
      const ratio = Math.max(1, size.width / WIDE);
      const [width, height] = [Math.round(size.width / ratio), Math.round(size.height / ratio)];
      if (target.width !== width || target.height !== height) {
        target.setSize(width, height);
        bytes = new Uint8Array(width * height * 4);
      }
      const axisShown = axis.visible;
      axis.visible = false;
      scene.overrideMaterial = material;
      gl.getClearColor(colour);
      const alpha = gl.getClearAlpha();
      gl.setClearColor(0, 0);
      gl.setRenderTarget(target);
      gl.render(scene, camera);
      gl.setRenderTarget(null);
      gl.setClearColor(colour, alpha);
      scene.overrideMaterial = null;
      axis.visible = axisShown;
      gl.readRenderTargetPixels(target, 0, 0, width, height, bytes);
      const numbers = new Uint8Array(width * height);
      // Rows come from the bottom up.
      for (let y = 0; y < height; y++) {
        for (let x = 0; x < width; x++) {
          numbers[y * width + x] = bytes[((height - 1 - y) * width + x) * 4] ?? 0;
        }
      }
      return { numbers, width, height, ratio };
    },
    distance({ x, y }) {
      const i = ((target.height - 1 - Math.round(y)) * target.width + Math.round(x)) * 4;
      return (((bytes[i + 1] ?? 0) * 256 + (bytes[i + 2] ?? 0)) / 65535) * FAR;
    },
    dispose() {
      target.dispose();
      material.dispose();
    },
  };
}

function numberMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    name: 'number',
    uniforms: { number: { value: 0 } },
    vertexShader: /* glsl */ `
out float vAway;
void main() {
  vec4 seen = modelViewMatrix * vec4(position, 1.0);
  vAway = -seen.z;
  gl_Position = projectionMatrix * seen;
}
`,
    fragmentShader: /* glsl */ `
precision highp float;
in float vAway;
uniform float number;
void main() {
  float away = clamp(vAway / ${FAR.toFixed(1)}, 0.0, 1.0) * 65535.0;
  float high = floor(away / 256.0);
  gl_FragColor = vec4(number / 255.0, high / 255.0, (away - high * 256.0) / 255.0, 1.0);
}
`,
  });
}

/** The place in the world that a pixel shows, from its distance along the viewing direction. */
export function placeAt(camera: Camera, at: { x: number; y: number }, size: Size, distance: number): Vector3 {
  const place = new Vector3((at.x / size.width) * 2 - 1, 1 - (at.y / size.height) * 2, 0.5).unproject(camera);
  const ray = place.sub(camera.position);
  camera.getWorldDirection(ahead);
  return ray.multiplyScalar(distance / ray.dot(ahead)).add(camera.position);
}

const ahead = new Vector3();
const colour = new Color();
