/**
 * GLSL of the room's light, worked out per fragment from where the panels are: no image is loaded or rendered, and
 * what a polished part reflects is where it would be in a real room.
 *
 * A tall window on the left with four panes, a pale card on the right and one over the viewer's shoulder as a
 * photographer would set them up, pale wall behind the bench, dark room before it.
 */
export const roomGlsl = /* glsl */ `
const vec3 WINDOW = vec3(-2.3, 1.95, 0.95);
const vec2 WINDOW_HALF = vec2(0.98, 0.62);
const vec3 WINDOW_LIGHT = vec3(5.6, 5.9, 6.3);
const vec3 CARD = vec3(2.5, 1.1, 0.9);
const vec2 CARD_HALF = vec2(0.9, 1.0);
const vec3 KEY = vec3(-0.7275, 0.6168, 0.3005);

// What roughness does to the panels' edges: 1 / width of the horizon's edge, 1 / width of a pane's edge, strength of the bars, brightness.
vec4 blurOf(float rough) {
  float blur = 0.04 + rough * rough * 0.9;
  float spread = blur * 1.9;
  float reach = (WINDOW_HALF.x * WINDOW_HALF.y) / ((WINDOW_HALF.x + spread * 0.5) * (WINDOW_HALF.y + spread * 0.5));
  return vec4(0.5 / (0.12 + blur), 0.5 / spread, 0.9 / (1.0 + spread * 9.0), reach);
}

// The room but for window and card: dark before the bench, pale behind it, a card over the viewer's shoulder.
vec3 roomShade(vec3 r, vec4 blur) {
  float up = clamp(0.5 + r.y * blur.x, 0.0, 1.0);
  float back = clamp(0.45 - r.z * blur.x * 0.45, 0.0, 1.0);
  vec3 wall = mix(vec3(0.115, 0.118, 0.122), vec3(0.36, 0.345, 0.315), back);
  wall += vec3(0.52, 0.53, 0.54) * clamp(r.z * 1.6 + r.y * 1.1 - 0.95 + blur.z * 0.1, 0.0, 0.62);
  return mix(vec3(0.255, 0.222, 0.188), wall, up);
}

vec3 roomCard(vec3 p, vec3 r, vec4 blur) {
  vec2 q = p.yz + r.yz * ((CARD.x - p.x) / (abs(r.x) + 1e-3)) - CARD.yz;
  vec2 card = clamp(0.5 - (abs(q) - CARD_HALF) * min(blur.y, 1.6), 0.0, 1.0);
  return vec3(1.2, 1.08, 0.92) * (step(0.0, r.x) * card.x * card.y);
}

vec3 roomLight(vec3 p, vec3 r, vec4 blur) {
  vec2 q = p.yz + r.yz * ((p.x - WINDOW.x) / (abs(r.x) + 1e-3)) - WINDOW.yz;
  vec2 pane = clamp(0.5 - (abs(q) - WINDOW_HALF) * blur.y, 0.0, 1.0);
  vec2 bar = clamp(0.5 - (abs(q) - 0.035) * min(blur.y * 2.0, 25.0), 0.0, 1.0);
  float glass = step(r.x, 0.0) * pane.x * pane.y * (1.0 - blur.z * max(bar.x, bar.y)) * blur.w;
  return roomShade(r, blur) + WINDOW_LIGHT * glass + roomCard(p, r, blur);
}

// What a matt surface facing n gathers from everything but the window.
vec3 roomFill(vec3 n) {
  vec3 fill = mix(vec3(0.20, 0.168, 0.135), vec3(0.36, 0.375, 0.40), n.y * 0.5 + 0.5);
  return fill + vec3(0.20, 0.175, 0.14) * max(0.0, dot(n, vec3(0.48, 0.20, 0.30)) + 0.4);
}

// Film curve with its gamma in one fraction (Hejl and Burgess-Dawson, from memory): no power function needed.
vec3 developed(vec3 c) {
  c = max(vec3(0.0), c * 0.95 - 0.004);
  return (c * (6.2 * c + 0.5)) / (c * (6.2 * c + 1.7) + 0.06);
}
`;
