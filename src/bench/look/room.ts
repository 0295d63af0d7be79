/** GLSL of the room's light, worked out per fragment from where the panels are: no image is loaded or rendered. */
export const roomGlsl = /* glsl */ `
// A tall window on the left with four panes, a warm card on the right, pale wall behind the bench, dark room before it.
const vec3 WINDOW = vec3(-2.3, 1.95, 0.95);
const vec2 WINDOW_HALF = vec2(0.62, 0.98);
const vec3 CARD = vec3(2.5, 1.1, 0.9);
const vec2 CARD_HALF = vec2(1.0, 0.9);

float soft(float d, float half_, float blur) {
  return smoothstep(half_ + blur, half_ - blur, abs(d));
}

vec3 roomLight(vec3 p, vec3 r, float rough) {
  float blur = 0.04 + rough * rough * 0.9;
  float up = smoothstep(-0.12 - blur, 0.12 + blur, r.y);
  float back = smoothstep(0.35 + blur * 0.5, -0.45 - blur * 0.5, r.z);
  vec3 wall = mix(vec3(0.075, 0.078, 0.082), vec3(0.34, 0.325, 0.295), back);
  vec3 above = mix(wall, vec3(0.30, 0.31, 0.32), smoothstep(0.25, 0.95, r.y) * 0.7);
  vec3 bench = vec3(0.135, 0.085, 0.047) * (0.7 + 0.3 * back);
  vec3 light = mix(bench, above, up);
  float spread = blur * 1.9;
  if (r.x < -0.02) {
    vec3 q = p + r * ((WINDOW.x - p.x) / r.x) - WINDOW;
    float pane = soft(q.z, WINDOW_HALF.x, spread) * soft(q.y, WINDOW_HALF.y, spread);
    float bars = 1.0 - 0.9 * max(soft(q.z, 0.035, 0.02 + spread * 0.5), soft(q.y, 0.035, 0.02 + spread * 0.5)) / (1.0 + spread * 9.0);
    float reach = (WINDOW_HALF.x * WINDOW_HALF.y) / ((WINDOW_HALF.x + spread * 0.5) * (WINDOW_HALF.y + spread * 0.5));
    light += vec3(5.6, 5.9, 6.3) * pane * bars * reach;
  }
  if (r.x > 0.02) {
    vec3 q = p + r * ((CARD.x - p.x) / r.x) - CARD;
    light += vec3(1.05, 0.93, 0.76) * soft(q.z, CARD_HALF.x, 0.25 + spread) * soft(q.y, CARD_HALF.y, 0.25 + spread);
  }
  return light;
}

// What a matt surface facing n gathers from everything but the window.
vec3 roomFill(vec3 n) {
  vec3 fill = mix(vec3(0.20, 0.145, 0.10), vec3(0.40, 0.415, 0.44), n.y * 0.5 + 0.5);
  fill += vec3(0.24, 0.205, 0.16) * max(0.0, dot(n, vec3(0.80, 0.33, 0.50)) * 0.6 + 0.4);
  return fill;
}
`;
