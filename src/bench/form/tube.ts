import {
  type BufferGeometry,
  CatmullRomCurve3,
  CurvePath,
  LineCurve3,
  QuadraticBezierCurve3,
  TubeGeometry,
  Vector3,
} from 'three';

export type Spot = readonly [number, number, number];

/** A straight-run path through points whose corners are bent to a radius, m: how pipe and rod are formed. */
export function bentPath(points: readonly Spot[], radius: number): CurvePath<Vector3> {
  const path = new CurvePath<Vector3>();
  const v = points.map((p) => new Vector3(...p));
  let from = v[0] ?? new Vector3();
  for (let i = 1; i < v.length; i++) {
    const corner = v[i] ?? from;
    const next = v[i + 1];
    if (next === undefined) {
      path.add(new LineCurve3(from, corner));
      break;
    }
    const r = Math.min(radius, corner.distanceTo(from) * 0.49, corner.distanceTo(next) * 0.49);
    const a = corner.clone().add(from.clone().sub(corner).setLength(r));
    const b = corner.clone().add(next.clone().sub(corner).setLength(r));
    if (a.distanceTo(from) > 1e-6) path.add(new LineCurve3(from, a));
    path.add(new QuadraticBezierCurve3(a, corner, b));
    from = b;
  }
  return path;
}

/** A round bar or pipe along straight runs with formed bends. */
export function bentTube(
  points: readonly Spot[],
  diameter: number,
  bend: number,
  steps = 32,
  round = 10,
): BufferGeometry {
  return measured(new TubeGeometry(bentPath(points, bend), steps, diameter / 2, round, false), diameter);
}

/** A slack tube such as a hose, smooth through its points. */
export function slackTube(points: readonly Spot[], diameter: number, steps = 32, round = 10): BufferGeometry {
  const curve = new CatmullRomCurve3(points.map((p) => new Vector3(...p)));
  return measured(new TubeGeometry(curve, steps, diameter / 2, round, false), diameter);
}

/** Gives a tube's texture coordinates in metres. */
function measured(tube: TubeGeometry, diameter: number): BufferGeometry {
  const length = tube.parameters.path.getLength();
  const uv = tube.getAttribute('uv');
  for (let i = 0; i < uv.count; i++) uv.setXY(i, uv.getX(i) * length, uv.getY(i) * Math.PI * diameter);
  return tube;
}
