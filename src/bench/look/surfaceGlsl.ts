import { roomGlsl } from './room.ts';

export const vertexGlsl = /* glsl */ `
in vec4 tint;
in vec4 finish;
uniform mat4 shadowMatrix;
out vec3 vWorld;
out vec3 vNormal;
out vec3 vLocal;
out vec3 vLocalNormal;
out vec2 vUv;
out vec4 vTint;
flat out vec4 vFinish;
out vec3 vShadow;

void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vWorld = world.xyz;
  vNormal = mat3(modelMatrix) * normal;
  vLocal = position;
  vLocalNormal = normal;
  vUv = uv;
  vTint = vec4(tint.rgb * tint.rgb, tint.a);
  vFinish = finish;
  vec4 s = shadowMatrix * vec4(world.xyz + normalize(vNormal) * 0.0012, 1.0);
  vShadow = s.xyz;
  gl_Position = projectionMatrix * viewMatrix * world;
}
`;

/** Patterns: a height for the light to play on, and a change of colour; faded where they would shimmer. */
const patternGlsl = /* glsl */ `
vec2 grain(vec3 p, vec3 n, float scale) {
  vec3 a = abs(n);
  vec2 q = a.x > a.y && a.x > a.z ? p.yz : (a.y > a.z ? p.xz : p.xy);
  return texture(noiseMap, q * scale).rg;
}

float bumpHeight(int kind, inout vec3 albedo, inout float rough, float pixel) {
  float h = 0.0;
  if (kind == 1) {
    vec2 g = grain(vLocal, vLocalNormal, 34.0);
    h = g.g * 0.00042 * smoothstep(0.0012, 0.0002, pixel);
    albedo *= 0.86 + 0.28 * g.r;
  } else if (kind == 2) {
    float f = vUv.x * 2200.0;
    h = sin(f) * 0.000011 * smoothstep(0.0009, 0.0002, pixel);
    albedo *= 0.965 + 0.07 * sin(f * 0.31 + sin(f * 0.077));
  } else if (kind == 9) {
    vec2 g = texture(noiseMap, vec2(vLocal.x * 9.0 + vLocal.z * 3.0, (vLocal.y + vLocal.z) * 210.0)).rg;
    albedo *= 0.92 + 0.16 * g.g;
    rough += (g.g - 0.5) * 0.14;
  } else if (kind == 7) {
    vec2 g = grain(vLocal, vLocalNormal, 21.0);
    h = g.r * 0.00022;
    albedo *= 0.95 + 0.1 * g.r;
  } else if (kind == 3) {
    vec2 g = texture(noiseMap, vec2(vLocal.x * 1.3, (vLocal.z + vLocal.y) * 15.0)).rg;
    vec2 fleck = texture(noiseMap, vec2(vLocal.x * 9.0, (vLocal.z + vLocal.y) * 120.0)).rg;
    float line = g.r * 0.75 + fleck.g * 0.25;
    albedo *= 0.74 + 0.52 * line;
    albedo *= vec3(1.0, 0.99 - 0.05 * g.g, 0.97 - 0.09 * g.g);
    rough += (fleck.g - 0.5) * 0.16;
  } else if (kind == 4) {
    vec2 w = vUv * 1900.0;
    float weave = sin(w.x) * sin(w.y);
    float seen = smoothstep(0.0011, 0.0003, pixel);
    h = weave * 0.00011 * seen;
    albedo *= 0.92 + 0.1 * weave * seen;
  } else if (kind == 5) {
    vec2 g = texture(noiseMap, vLocal.xy * 1.1).rg;
    albedo *= 0.95 + 0.1 * g.r;
  } else if (kind == 8) {
    vec2 w = vUv * vec2(4200.0, 60.0);
    h = (abs(sin(w.x + w.y)) + abs(sin(w.x - w.y))) * 0.00012 * smoothstep(0.0008, 0.0002, pixel);
  }
  return h;
}
`;

export const fragmentGlsl = /* glsl */ `
precision highp float;
precision highp sampler2DShadow;
in vec3 vWorld;
in vec3 vNormal;
in vec3 vLocal;
in vec3 vLocalNormal;
in vec2 vUv;
in vec4 vTint;
flat in vec4 vFinish;
in vec3 vShadow;
uniform sampler2D noiseMap;
uniform sampler2DShadow shadowMap;
uniform float shadowOn;
uniform float shadowTexel;
${roomGlsl}
${patternGlsl}

const vec3 KEY = normalize(WINDOW);

float lit() {
  if (shadowOn < 0.5) return 1.0;
  vec3 s = vShadow;
  if (s.x < 0.0 || s.x > 1.0 || s.y < 0.0 || s.y > 1.0 || s.z > 1.0) return 1.0;
  float t = shadowTexel * 1.6;
  float turn = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715)))) * 6.2832;
  vec2 d = vec2(cos(turn), sin(turn)) * t;
  float sum = texture(shadowMap, vec3(s.xy + d, s.z));
  sum += texture(shadowMap, vec3(s.xy - d, s.z));
  sum += texture(shadowMap, vec3(s.xy + vec2(-d.y, d.x) * 2.0, s.z));
  sum += texture(shadowMap, vec3(s.xy - vec2(-d.y, d.x) * 2.0, s.z));
  return sum * 0.25;
}

void main() {
  vec3 albedo = vTint.rgb;
  float rough = vFinish.x;
  float metal = vFinish.y;
  int kind = int(vFinish.z * 15.94 + 0.5);
  float pixel = length(fwidth(vLocal));
  vec3 n = normalize(gl_FrontFacing ? vNormal : -vNormal);
  if (kind == 6) {
    float line = abs(fract(vUv.x) - 0.5);
    float w = max(fwidth(vUv.x), 1e-4);
    float ink = vUv.x == 0.0 ? 0.0 : smoothstep(0.06 + w, 0.06 - w * 0.2, line) * clamp(0.5 / w, 0.25, 1.0);
    vec3 paperTint = mix(albedo, vec3(0.86, 0.85, 0.82), vUv.y * 0.6);
    vec3 c = mix(paperTint, vec3(0.06, 0.07, 0.08), ink * mix(0.85, 0.6, vUv.y));
    gl_FragColor = vec4(c * (0.62 + 0.2 * max(0.0, dot(n, KEY))), 1.0);
  } else {
    vec3 dx = dFdx(vWorld);
    vec3 dy = dFdy(vWorld);
    float h = bumpHeight(kind, albedo, rough, pixel);
    vec3 r1 = cross(dy, n);
    vec3 r2 = cross(n, dx);
    float det = dot(dx, r1);
    n = normalize(abs(det) * n - sign(det) * (dFdx(h) * r1 + dFdy(h) * r2) + n * 1e-12);
    vec3 v = normalize(cameraPosition - vWorld);
    float facing = clamp(dot(n, v), 0.02, 1.0);
    float open = vTint.a;
    float near = mix(smoothstep(-0.004, 0.05, vWorld.y), 1.0, clamp(n.y * 0.5 + 0.75, 0.0, 1.0));
    open *= near;
    float shadow = lit();
    vec3 l = normalize(WINDOW - vWorld);
    float key = max(0.0, dot(n, l) * 0.88 + 0.12) * shadow;
    vec3 matt = albedo * (1.0 - metal) * (roomFill(n) * open + vec3(1.55, 1.58, 1.64) * key);
    vec3 f0 = mix(vec3(0.04), albedo, metal);
    vec3 r = reflect(-v, n);
    vec3 gleam = roomLight(vWorld, r, rough) * mix(0.35 + 0.65 * shadow, 1.0, 0.35) * open;
    // Environment BRDF fitted by a short polynomial (Karis 2014, from memory).
    vec4 k = rough * vec4(-1.0, -0.0275, -0.572, 0.022) + vec4(1.0, 0.0425, 1.04, -0.04);
    float a004 = min(k.x * k.x, exp2(-9.28 * facing)) * k.x + k.y;
    vec2 ab = vec2(-1.04, 1.04) * a004 + k.zw;
    gl_FragColor = vec4(matt + gleam * (f0 * ab.x + ab.y), 1.0);
  }
  #include <tonemapping_fragment>
  #include <colorspace_fragment>
}
`;
