import { roomGlsl } from './room.ts';

export const vertexGlsl = /* glsl */ `
in vec4 tint;
in vec4 finish;
out vec3 vWorld;
out vec3 vNormal;
out vec2 vGrain;
out vec4 vTint;
flat out vec4 vFinish;

void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vWorld = world.xyz;
  vNormal = mat3(modelMatrix) * normal;
  vGrain = uv;
  vTint = vec4(tint.rgb * tint.rgb, tint.a);
  vFinish = finish;
  gl_Position = projectionMatrix * (viewMatrix * world);
}
`;

/**
 * One straight run without branches: software renderers work through both sides of every branch, so a branch costs
 * there and saves nothing.
 */
export const fragmentGlsl = /* glsl */ `
precision highp float;
in vec3 vWorld;
in vec3 vNormal;
in vec2 vGrain;
in vec4 vTint;
flat in vec4 vFinish;
uniform mat4 shadowMatrix;
uniform sampler2D noiseMap;
uniform sampler2D shadowMap;
uniform float shadowOn;
uniform float shadowTexel;
uniform float veil;
${roomGlsl}

float seen(vec2 at, float depth) {
  vec2 d = texture(shadowMap, at).rg;
  return step(depth, d.x + d.y / 255.0);
}

float lit(vec3 n) {
  vec3 s = (shadowMatrix * vec4(vWorld + n * 0.0012, 1.0)).xyz;
  // Dither, so that few samples make a soft edge.
  float turn = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715)))) * 2.0 - 1.0;
  vec2 d = vec2(turn, 1.0 - abs(turn)) * shadowTexel * 1.5;
  float sum = 0.5 * (seen(s.xy + d, s.z) + seen(s.xy - d, s.z));
#if SHADOW_TAPS == 4
  d = vec2(-d.y, d.x) * 1.7;
  sum = 0.5 * sum + 0.25 * (seen(s.xy + d, s.z) + seen(s.xy - d, s.z));
#endif
  vec2 inside = step(abs(s.xy - 0.5), vec2(0.5));
  return mix(1.0, sum, shadowOn * inside.x * inside.y);
}

void main() {
  vec2 g = texture(noiseMap, vGrain).rg - 0.5;
  vec3 albedo = vTint.rgb * (1.0 + vFinish.z * g.r);
  float rough = clamp(vFinish.x + 0.6 * vFinish.z * g.g, 0.05, 1.0);
  float metal = vFinish.y;
  vec3 n = normalize(vNormal);
  vec3 away = cameraPosition - vWorld;
  float far = length(away);
  vec3 v = away / far;
  float shadow = lit(n);
#ifdef RELIEF
  vec3 dx = dFdx(vWorld);
  vec3 dy = dFdy(vWorld);
  // Fine relief would shimmer where a pixel is wider than it.
  float h = g.g * vFinish.w * 1e-4 * clamp(0.45 / far - 0.25, 0.0, 1.0);
  vec3 r1 = cross(dy, n);
  vec3 r2 = cross(n, dx);
  float det = dot(dx, r1);
  n = normalize(abs(det) * n - sign(det) * (dFdx(h) * r1 + dFdy(h) * r2) + n * 1e-12);
#endif
  float grazing = 1.0 - clamp(dot(n, v), 0.0, 1.0);
  float open = vTint.a * mix(clamp(vWorld.y * 18.0 + 0.1, 0.0, 1.0), 1.0, clamp(n.y * 0.5 + 0.75, 0.0, 1.0));
  float key = max(0.0, dot(n, KEY) * 0.88 + 0.12) * shadow * (1.0 - 0.16 * vWorld.x);
  vec3 matt = albedo * (1.0 - metal) * (roomFill(n) * open + vec3(1.5, 1.53, 1.6) * key);
  vec3 gleam = roomLight(vWorld, reflect(-v, n), blurOf(vFinish.x)) * (0.6 + 0.4 * shadow) * open;
  vec3 f0 = mix(vec3(0.04), albedo, metal);
  float polish = 1.0 - rough;
  float rim = grazing * grazing;
  rim = rim * rim * grazing * polish * polish;
  vec3 seenLight = developed(matt + gleam * (f0 + (1.0 - f0) * rim));
  gl_FragColor = vec4(mix(seenLight, vec3(0.80, 0.785, 0.75), veil), 1.0);
}
`;

export const cutVertexGlsl = /* glsl */ `
in vec4 tint;
out vec2 vUv;
out vec3 vTint;
out vec3 vNormal;
void main() {
  vUv = uv;
  vTint = tint.rgb * tint.rgb;
  vNormal = mat3(modelMatrix) * normal;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}
`;

/** Cut faces as on a drawing: pale, with the hatching of ISO 128, hardly shaded. */
export const cutFragmentGlsl = /* glsl */ `
precision highp float;
in vec2 vUv;
in vec3 vTint;
in vec3 vNormal;
${roomGlsl}
void main() {
  float line = abs(fract(vUv.x) - 0.5);
  float w = max(fwidth(vUv.x), 1e-4);
  float ink = step(1e-9, abs(vUv.x)) * smoothstep(0.055 + w, 0.055 - w * 0.2, line) * clamp(0.5 / w, 0.25, 1.0);
  vec3 paperTint = mix(vTint, vec3(0.86, 0.85, 0.82), vUv.y * 0.7);
  vec3 c = mix(paperTint, vec3(0.05, 0.06, 0.07), ink * mix(0.9, 0.6, vUv.y));
  gl_FragColor = vec4(developed(c * (0.62 + 0.1 * normalize(vNormal).z)), 1.0);
}
`;
