import { roomGlsl } from './room.ts';

/**
 * The surface for slow machines: all light is worked out on the vertices, in the window's light and in its shadow, with
 * the same room as the fine surface has. Which of the two it is, the fragment asks; where even that is too much (BARE),
 * the vertex.
 */
export const plainVertexGlsl = /* glsl */ `
in vec4 tint;
in vec4 finish;
uniform mat4 shadowMatrix;
uniform float veil;
out vec3 vLit;
#ifdef BARE
uniform sampler2D shadowMap;
uniform float shadowOn;
#else
out vec3 vDark;
out vec3 vShadow;
#endif
${roomGlsl}

vec3 veiled(vec3 light) {
  return mix(developed(light), vec3(0.80, 0.785, 0.75), veil);
}

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
  vec3 soft = matt * roomFill(n) * open + gleam * (roomShade(r, blur) + roomCard(world.xyz, r, blur)) * 0.85;
  // The window's mirror image: how far from its middle the mirrored sight meets the window's plane.
  vec2 off = abs(world.yz - WINDOW.yz + r.yz * ((world.x - WINDOW.x) / max(-r.x, 1e-3)));
  vec2 pane = clamp(0.5 + (WINDOW_HALF - off) * blur.y, 0.0, 1.0);
  vec3 image = gleam * WINDOW_LIGHT * (blur.w * pane.x * pane.y * step(r.x, 0.0));
  vec3 dark = soft + image * 0.55;
  vec3 lit = soft + image * 0.9 + matt * vec3(1.5, 1.53, 1.6) * key;
  vec3 s = (shadowMatrix * vec4(world.xyz + n * 0.0012, 1.0)).xyz;
#ifdef BARE
  vec2 depth = textureLod(shadowMap, s.xy, 0.0).rg;
  vec2 aside = abs(s.xy - 0.5);
  float isDark = shadowOn * step(max(aside.x, aside.y), 0.5) * step(depth.x + depth.y / 255.0, s.z);
  vLit = veiled(mix(lit, dark, isDark));
#else
  vDark = veiled(dark);
  vLit = veiled(lit);
  vShadow = s;
#endif
  gl_Position = projectionMatrix * (viewMatrix * world);
}
`;

export const plainFragmentGlsl = /* glsl */ `
precision highp float;
in vec3 vLit;
#ifdef BARE
void main() {
  gl_FragColor = vec4(vLit, 1.0);
}
#else
in vec3 vDark;
in vec3 vShadow;
uniform sampler2D shadowMap;
uniform float shadowOn;

void main() {
  vec2 depth = texture(shadowMap, vShadow.xy).rg;
  vec2 aside = abs(vShadow.xy - 0.5);
  float isDark = shadowOn * step(max(aside.x, aside.y), 0.5) * step(depth.x + depth.y / 255.0, vShadow.z);
  gl_FragColor = vec4(mix(vLit, vDark, isDark), 1.0);
}
#endif
`;
