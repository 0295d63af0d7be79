import { NoToneMapping, WebGLRenderer } from 'three';

/**
 * A renderer whose canvas lets nothing through.
 *
 * Three by itself always asks for a canvas that might, whatever its `alpha` says; the browser then lays the page under
 * the whole picture in every frame. Throws what three throws where there is no WebGL.
 */
export function opaqueRenderer({ canvas }: { readonly canvas: unknown }): WebGLRenderer {
  if (!(canvas instanceof HTMLCanvasElement)) throw new Error('the bench is drawn on a canvas of the page');
  const asked: WebGLContextAttributes = {
    alpha: false,
    antialias: false,
    stencil: false,
    powerPreference: 'high-performance',
  };
  const context = canvas.getContext('webgl2', asked);
  const gl = new WebGLRenderer({ ...asked, canvas, ...(context === null ? {} : { context }) });
  gl.toneMapping = NoToneMapping;
  return gl;
}
