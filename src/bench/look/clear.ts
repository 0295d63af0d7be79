import { type IUniform, NormalBlending, ShaderMaterial } from 'three';
import { roomGlsl } from './room.ts';
import type { SharedUniforms } from './surface.ts';
import { vertexGlsl } from './surfaceGlsl.ts';

const fragmentGlsl = /* glsl */ `
precision highp float;
in vec3 vWorld;
in vec3 vNormal;
in vec4 vTint;
uniform float veil;
${roomGlsl}
void main() {
  vec3 n = normalize(gl_FrontFacing ? vNormal : -vNormal);
  vec3 v = normalize(cameraPosition - vWorld);
  float facing = clamp(dot(n, v), 0.0, 1.0);
  float edge = pow(1.0 - facing, 3.0);
  vec3 gleam = roomLight(vWorld, reflect(-v, n), blurOf(0.06)) * (0.04 + 0.5 * edge);
  vec3 body = vTint.rgb * (0.55 + 0.6 * roomFill(n));
  float alpha = clamp(vTint.a + edge * 0.35, 0.0, 1.0);
  gl_FragColor = vec4(mix(developed(body + gleam), vec3(0.80, 0.785, 0.75), veil), alpha * (1.0 - 0.5 * veil));
}
`;

/**
 * Glass and fuel: lets through what stands behind it; how much is the alpha of the vertices' tint. `veil` as of the
 * solid surfaces.
 */
export function clearMaterial(shared: SharedUniforms, veil: IUniform<number> = { value: 0 }): ShaderMaterial {
  return new ShaderMaterial({
    name: 'clear',
    vertexShader: vertexGlsl,
    fragmentShader: fragmentGlsl,
    uniforms: { ...shared, veil },
    transparent: true,
    depthWrite: false,
    blending: NormalBlending,
  });
}
