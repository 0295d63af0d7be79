import { BufferGeometry, Float32BufferAttribute } from 'three';

/** A helical compression spring with closed and ground ends; lengths m, standing on y = 0. */
export type CoilSpec = {
  readonly wire: number;
  readonly mean: number;
  readonly coils: number;
  readonly perCoil?: number;
};

export type Coil = {
  readonly geometry: BufferGeometry;
  /** Bends the wire to a new overall length (m) in place. */
  setLength(length: number): void;
};

const ROUND = 8;

/** Makes a spring whose wire keeps its true section whatever the length; `half` keeps only the back (z <= 0). */
export function coil(spec: CoilSpec, length: number): Coil {
  const steps = Math.round(spec.coils * (spec.perCoil ?? 16));
  const count = (steps + 1) * ROUND;
  const geometry = new BufferGeometry();
  const position = new Float32BufferAttribute(new Float32Array(count * 3), 3);
  const normal = new Float32BufferAttribute(new Float32Array(count * 3), 3);
  geometry.setAttribute('position', position);
  geometry.setAttribute('normal', normal);
  geometry.setAttribute('uv', new Float32BufferAttribute(new Float32Array(count * 2), 2));
  geometry.setIndex(wireFaces(steps));
  let current = -1;
  const setLength = (to: number): void => {
    if (Math.abs(to - current) < 1e-6) return;
    current = to;
    bend(spec, to, steps, position, normal);
    position.needsUpdate = true;
    normal.needsUpdate = true;
  };
  setLength(length);
  geometry.computeBoundingSphere();
  return { geometry, setLength };
}

/** Height of the wire's centre after `turns` of `coils`: one closed coil at each end, the rest evenly pitched. */
function wireHeight({ wire, coils }: CoilSpec, turns: number, length: number): number {
  const closed = Math.min(wire, length / coils);
  if (turns < 1) return closed * turns;
  if (turns > coils - 1) return length - closed * (coils - turns);
  return closed + ((length - 2 * closed) / (coils - 2)) * (turns - 1);
}

function bend(
  spec: CoilSpec,
  length: number,
  steps: number,
  position: Float32BufferAttribute,
  normal: Float32BufferAttribute,
): void {
  const r = spec.mean / 2;
  for (let i = 0; i <= steps; i++) {
    const turns = (spec.coils * i) / steps;
    const angle = turns * Math.PI * 2;
    const y = wireHeight(spec, turns, length);
    const sin = Math.sin(angle);
    const cos = Math.cos(angle);
    for (let j = 0; j < ROUND; j++) {
      const a = (j / ROUND) * Math.PI * 2;
      const out = Math.cos(a);
      const up = Math.sin(a);
      const k = i * ROUND + j;
      const radius = r + (out * spec.wire) / 2;
      const round = y + (up * spec.wire) / 2;
      const ground = Math.max(0, Math.min(length, round));
      position.setXYZ(k, radius * sin, ground, radius * cos);
      if (ground === round) normal.setXYZ(k, out * sin, up, out * cos);
      else normal.setXYZ(k, 0, Math.sign(up), 0);
    }
  }
}

function wireFaces(steps: number): number[] {
  const faces: number[] = [];
  for (let i = 0; i < steps; i++) {
    for (let j = 0; j < ROUND; j++) {
      const a = i * ROUND + j;
      const b = i * ROUND + ((j + 1) % ROUND);
      faces.push(a, a + ROUND, b, b, a + ROUND, b + ROUND);
    }
  }
  for (let j = 1; j < ROUND - 1; j++) {
    faces.push(0, j, j + 1);
    const last = steps * ROUND;
    faces.push(last, last + j + 1, last + j);
  }
  return faces;
}
