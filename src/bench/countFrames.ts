import type { WebGLRenderer } from 'three';
import type { Fineness } from './look/quality.ts';

/** What the page tells of its drawing where its address asks for it (`?stats`), for tests and benchmarks. */
export type FrameCount = Fineness & {
  drawn: number;
  calls: number;
  triangles: number;
  /** What the graphics card holds. */
  geometries: number;
  textures: number;
  /** Clock of the model, steps. */
  step: number;
};

/** Returns what is to be told each drawn frame; tells nobody where the address does not ask. */
export function frameCounter(): (gl: WebGLRenderer, fineness: Fineness, step: number) => void {
  if (!new URLSearchParams(window.location.search).has('stats')) return () => undefined;
  const told: Partial<FrameCount> = {};
  Object.assign(globalThis, { __benchStats: told });
  let drawn = 0;
  return (gl, fineness, step) => {
    drawn += 1;
    const { calls, triangles } = gl.info.render;
    const { geometries, textures } = gl.info.memory;
    Object.assign(told, fineness, { drawn, calls, triangles, geometries, textures, step });
  };
}
