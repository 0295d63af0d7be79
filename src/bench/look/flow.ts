import { type IUniform, ShaderMaterial } from 'three';
import { roomGlsl } from './room.ts';

/** Fuel in a passage: pressure as a share of the injector's opening pressure, air as a share of the passage. */
export type Flow = { readonly pressure: IUniform<number>; readonly air: IUniform<number> };

const vertexShader = /* glsl */ `
out vec2 vUv;
out vec3 vNormal;
void main() {
  vUv = uv * 1000.0;
  vNormal = mat3(modelMatrix) * normal;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

/**
 * Pressure is told twice, by a darker, redder straw and by more dots, so that it reads without colour too; air by
 * bubbles with outlines. One cell of the pattern is a square millimetre or two.
 */
const fragmentShader = /* glsl */ `
precision highp float;
in vec2 vUv;
in vec3 vNormal;
uniform float pressure;
uniform float air;
${roomGlsl}
float chance(vec2 cell) {
  return fract(sin(dot(cell, vec2(12.9898, 78.233))) * 43758.5453);
}
void main() {
  vec3 n = normalize(vNormal);
  vec3 fuel = mix(vec3(0.72, 0.43, 0.07), vec3(0.36, 0.11, 0.035), pressure);
  vec2 fine = vUv / 0.9;
  float dot_ = length(fract(fine) - 0.5) - 0.24;
  float shown = step(chance(floor(fine)), 0.08 + 0.9 * pressure);
  float edge = max(fwidth(fine.x), 0.02);
  fuel = mix(fuel, vec3(0.07, 0.05, 0.04), shown * smoothstep(edge, -edge, dot_) * 0.8);
  vec2 coarse = vUv / vec2(3.1, 3.4);
  float bubble = abs(length(fract(coarse) - 0.5) - 0.32);
  float isAir = step(chance(floor(coarse) + 7.0), air);
  float inside = smoothstep(0.34, 0.30, length(fract(coarse) - 0.5));
  fuel = mix(fuel, vec3(0.86, 0.85, 0.80), isAir * inside);
  fuel = mix(fuel, vec3(0.10, 0.10, 0.11), isAir * smoothstep(0.05, 0.02, bubble));
  float light = 0.75 + 0.35 * max(0.0, dot(n, KEY));
  gl_FragColor = vec4(developed(fuel * light * 1.15), 1.0);
}
`;

/** Makes the material of one passage and the handles to its state. */
export function flowMaterial(): { material: ShaderMaterial; flow: Flow } {
  const flow: Flow = { pressure: { value: 0 }, air: { value: 0 } };
  return {
    material: new ShaderMaterial({ name: 'flow', vertexShader, fragmentShader, uniforms: { ...flow } }),
    flow,
  };
}
