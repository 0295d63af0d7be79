import { roomGlsl } from './room.ts';

/**
 * The surface for slow machines: all light but the window's mirror image and its shadow is worked out on the
 * vertices, with the same room as the fine surface has.
 */
export const plainVertexGlsl = /* glsl */ `
in vec4 tint;
in vec4 finish;
uniform mat4 shadowMatrix;
// Light that no shadow takes away; light of the window on a matt surface.
out vec3 vSoft;
out vec3 vKey;
// Colour of the window's mirror image; 1 / width of its edges, 1/m.
out vec4 vGleam;
// Where the mirrored sight meets the window's plane from its middle, m, times the third.
out vec3 vMirror;
out vec3 vShadow;
${roomGlsl}

void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vec3 n = mat3(modelMatrix) * normal;
  vec3 v = normalize(cameraPosition - world.xyz);
  vec3 albedo = tint.rgb * tint.rgb;
  float metal = finish.y;
  float open = tint.a * mix(clamp(world.y * 18.0 + 0.1, 0.0, 1.0), 1.0, clamp(n.y * 0.5 + 0.75, 0.0, 1.0));
  float key = max(0.0, dot(n, KEY) * 0.88 + 0.12) * (1.0 - 0.16 * world.x);
  float grazing = 1.0 - clamp(dot(n, v), 0.0, 1.0);
  float polish = 1.0 - finish.x;
  float rim = grazing * grazing;
  rim = rim * rim * grazing * polish * polish;
  vec3 f0 = mix(vec3(0.04), albedo, metal);
  vec3 gleam = (f0 + (1.0 - f0) * rim) * open;
  vec3 r = reflect(-v, n);
  vec4 blur = blurOf(finish.x);
  vec3 matt = albedo * (1.0 - metal);
  vSoft = matt * roomFill(n) * open + gleam * (roomShade(r, blur) + roomCard(world.xyz, r, blur)) * 0.85;
  vKey = matt * vec3(1.5, 1.53, 1.6) * key;
  vGleam = vec4(gleam * WINDOW_LIGHT * blur.w, blur.y);
  vMirror = vec3((world.yz - WINDOW.yz) * -r.x + r.yz * (world.x - WINDOW.x), -r.x);
  vShadow = (shadowMatrix * vec4(world.xyz + n * 0.0012, 1.0)).xyz;
  gl_Position = projectionMatrix * viewMatrix * world;
}
`;

export const plainFragmentGlsl = /* glsl */ `
precision highp float;
in vec3 vSoft;
in vec3 vKey;
in vec4 vGleam;
in vec3 vMirror;
in vec3 vShadow;
uniform sampler2D shadowMap;
uniform float shadowOn;
uniform float veil;
${roomGlsl}

void main() {
  vec2 depth = texture(shadowMap, vShadow.xy).rg;
  vec2 inside = step(abs(vShadow.xy - 0.5), vec2(0.5));
  float lit = 1.0 - shadowOn * inside.x * inside.y * step(depth.x + depth.y / 255.0, vShadow.z);
  float sharp = vGleam.w;
  vec2 off = abs(vMirror.xy) * (sharp / max(vMirror.z, 1e-3));
  vec2 pane = clamp(0.5 + WINDOW_HALF * sharp - off, 0.0, 1.0);
  vec3 light = vSoft + vKey * lit + vGleam.rgb * (pane.x * pane.y * (0.55 + 0.35 * lit));
  gl_FragColor = vec4(mix(developed(light), vec3(0.80, 0.785, 0.75), veil), 1.0);
}
`;
