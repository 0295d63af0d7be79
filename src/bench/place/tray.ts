import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { outline, rectangle, rise } from '../form/extrude.ts';
import { sheet } from '../form/sheet.ts';
import type { Spot } from '../form/tube.ts';
import { joined, painted } from '../look/paints.ts';

const HEIGHT = 0.022;
const BEAD = 2 * mm;

/** Enamelled tray about its centre: flat floor, sloping walls, a rolled edge where the enamel is blue-black. */
export function trayForm(width: number, depth: number): BufferGeometry {
  const floor = painted(
    rise(outline(rectangle(width - 0.022, depth - 0.022), 0.02), 0.002, 0, 8),
    'trayEnamel',
  );
  const path = (grow: number): [number, number][] =>
    roundedPath(width / 2 + grow, depth / 2 + grow, 0.03 + grow);
  const inner = path(-0.0125);
  const rim = path(-BEAD);
  const n = rim.length;
  const p = (list: [number, number][], i: number, y: number): Spot => {
    const q = list[i % n] ?? [0, 0];
    return [q[0], y, q[1]];
  };
  const walls = sheet();
  for (let i = 0; i < n; i++) {
    walls.quad([p(inner, i, 0.0018), p(rim, i, HEIGHT), p(rim, i + 1, HEIGHT), p(inner, i + 1, 0.0018)]);
    walls.quad([p(inner, i + 1, 0), p(rim, i + 1, HEIGHT), p(rim, i, HEIGHT), p(inner, i, 0)]);
  }
  return joined([floor, painted(walls.done(), 'trayEnamel'), painted(bead(rim), 'trayRim')]);
}

/** The rolled edge: a round bead along the rim. */
function bead(rim: readonly [number, number][]): BufferGeometry {
  const out = sheet();
  const n = rim.length;
  const round = 6;
  const outwards = (i: number): readonly [number, number] => {
    const a = rim[(i + n - 1) % n] ?? [0, 0];
    const b = rim[(i + 1) % n] ?? [0, 0];
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    return [(b[1] - a[1]) / size, -(b[0] - a[0]) / size];
  };
  const at = (i: number, k: number): { spot: Spot; normal: Spot } => {
    const q = rim[i % n] ?? [0, 0];
    const o = outwards(i % n);
    const a = (k / round) * 2 * Math.PI;
    const normal: Spot = [o[0] * Math.cos(a), Math.sin(a), o[1] * Math.cos(a)];
    return { spot: [q[0] + BEAD * normal[0], HEIGHT + BEAD * normal[1], q[1] + BEAD * normal[2]], normal };
  };
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < round; k++) {
      const [a, b, c, d] = [at(i, k), at(i, k + 1), at(i + 1, k + 1), at(i + 1, k)];
      out.quad([a.spot, b.spot, c.spot, d.spot], [a.normal, b.normal, c.normal, d.normal]);
    }
  }
  return out.done();
}

/** Points round a rounded rectangle, in an order that makes tray walls face up and inwards. */
function roundedPath(w: number, d: number, r: number): [number, number][] {
  const points: [number, number][] = [];
  const corners: [number, number, number][] = [
    [w - r, d - r, 0],
    [-w + r, d - r, Math.PI / 2],
    [-w + r, -d + r, Math.PI],
    [w - r, -d + r, 1.5 * Math.PI],
  ];
  for (const [x, z, from] of corners) {
    for (let i = 0; i <= 6; i++) {
      const a = from + (i / 6) * (Math.PI / 2);
      points.push([x + r * Math.cos(a), z + r * Math.sin(a)]);
    }
  }
  return points;
}
