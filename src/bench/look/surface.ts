import {
  DataTexture,
  type IUniform,
  LinearFilter,
  LinearMipmapLinearFilter,
  Matrix4,
  RepeatWrapping,
  RGFormat,
  ShaderMaterial,
  type Texture,
} from 'three';
import { plainFragmentGlsl, plainVertexGlsl } from './plainGlsl.ts';
import { cutFragmentGlsl, cutVertexGlsl, fragmentGlsl, vertexGlsl } from './surfaceGlsl.ts';

/** Uniforms that all surfaces share, so that one write reaches every part. */
export type SharedUniforms = {
  readonly noiseMap: IUniform<Texture>;
  readonly shadowMap: IUniform<Texture | null>;
  readonly shadowMatrix: IUniform<Matrix4>;
  /** 0 = no shadow map drawn yet or wanted. */
  readonly shadowOn: IUniform<number>;
  readonly shadowTexel: IUniform<number>;
};

const SIZE = 128;

/** A tile of smooth noise in two channels, coarse and fine, from a fixed sequence: the same grain on every machine. */
function noiseTile(): DataTexture {
  let seed = 0x2f6e2b1;
  const next = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 4294967296;
  };
  const data = new Uint8Array(SIZE * SIZE * 2);
  const layer = (cells: number): Float32Array => Float32Array.from({ length: cells * cells }, next);
  const octaves = [8, 16, 32, 64].map((cells) => ({ cells, values: layer(cells) }));
  for (let y = 0; y < SIZE; y++) {
    for (let x = 0; x < SIZE; x++) {
      const sum = octaves.map(({ cells, values }) =>
        sampled(values, cells, (x / SIZE) * cells, (y / SIZE) * cells),
      );
      const [a = 0, b = 0, c = 0, d = 0] = sum;
      data[(y * SIZE + x) * 2] = Math.round(255 * (0.5 * a + 0.28 * b + 0.14 * c + 0.08 * d));
      data[(y * SIZE + x) * 2 + 1] = Math.round(255 * (0.2 * b + 0.35 * c + 0.45 * d));
    }
  }
  const texture = new DataTexture(data, SIZE, SIZE, RGFormat);
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  texture.magFilter = LinearFilter;
  texture.minFilter = LinearMipmapLinearFilter;
  texture.generateMipmaps = true;
  texture.needsUpdate = true;
  return texture;
}

function sampled(values: Float32Array, cells: number, x: number, y: number): number {
  const x0 = Math.floor(x);
  const y0 = Math.floor(y);
  const ease = (t: number): number => t * t * (3 - 2 * t);
  const fx = ease(x - x0);
  const fy = ease(y - y0);
  const at = (i: number, j: number): number => values[(j % cells) * cells + (i % cells)] ?? 0;
  const top = at(x0, y0) * (1 - fx) + at(x0 + 1, y0) * fx;
  const low = at(x0, y0 + 1) * (1 - fx) + at(x0 + 1, y0 + 1) * fx;
  return top * (1 - fy) + low * fy;
}

/** Makes the uniforms that the materials of one scene share. */
export function sharedUniforms(): SharedUniforms {
  return {
    noiseMap: { value: noiseTile() },
    shadowMap: { value: null },
    shadowMatrix: { value: new Matrix4() },
    shadowOn: { value: 0 },
    shadowTexel: { value: 1 / 1024 },
  };
}

/**
 * The material of all solid parts: what differs from part to part is written on the vertices.
 *
 * `veil` 0..1 draws a part back towards the pale wall, so that what stands before it is seen. `least` is the poorest
 * shading that it will do with.
 */
export function surfaceMaterial(
  shared: SharedUniforms,
  veil: IUniform<number>,
  least: Shade = 'bare',
): ShaderMaterial {
  return new ShaderMaterial({
    name: 'surface',
    vertexShader: either(plainVertexGlsl, vertexGlsl),
    fragmentShader: either(plainFragmentGlsl, fragmentGlsl),
    uniforms: { ...shared, veil },
    defines: { ...SHADES.full },
    userData: { least },
  });
}

const either = (plain: string, rich: string): string => `#ifdef PLAIN\n${plain}\n#else\n${rich}\n#endif\n`;

/** How richly surfaces are shaded: with relief, without it, on the vertices but for their shadows, or wholly there. */
export type Shade = 'full' | 'smooth' | 'plain' | 'bare';

const SHADES: Readonly<Record<Shade, Readonly<Record<string, string | number>>>> = {
  full: { SHADOW_TAPS: 4, RELIEF: '' },
  smooth: { SHADOW_TAPS: 2 },
  plain: { PLAIN: '' },
  bare: { PLAIN: '', BARE: '' },
};

/** Shades surfaces as asked, or as poorly as they will do with; those that are shaded so already are left alone. */
export function shadeSurfaces(surfaces: readonly ShaderMaterial[], asked: Shade): void {
  for (const surface of surfaces) {
    const shade = asked === 'bare' && surface.userData.least === 'plain' ? 'plain' : asked;
    if (surface.userData.shade === shade) continue;
    surface.userData.shade = shade;
    surface.defines = { ...SHADES[shade] };
    surface.needsUpdate = true;
  }
}

/** Material of cut faces; they are flat and lie a hair before what they cut. */
export function cutMaterial(): ShaderMaterial {
  return new ShaderMaterial({ name: 'cut', vertexShader: cutVertexGlsl, fragmentShader: cutFragmentGlsl });
}
