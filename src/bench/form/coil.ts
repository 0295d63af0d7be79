import { BufferGeometry, Float32BufferAttribute } from 'three';

/** A helical compression spring with closed and ground ends; lengths m, standing on y = 0. */
export type CoilSpec = {
  readonly wire: number;
  readonly mean: number;
  readonly coils: number;
  /** Steps round a coil, a multiple of four. */
  readonly perCoil?: number;
};

export type Coil = {
  readonly geometry: BufferGeometry;
  /** The back half (z <= 0): the same vertices as the whole, painted or not, joined for the half only. */
  half(): BufferGeometry;
  /** The wire's faces in the cut at z = 0. */
  readonly cut: BufferGeometry;
  /** Bends the wire to a new overall length (m) in place. */
  setLength(length: number): void;
};

const ROUND = 8;

/** Makes a spring whose wire keeps its true section whatever the length. */
export function coil(spec: CoilSpec, length: number): Coil {
  const perCoil = spec.perCoil ?? 16;
  const steps = Math.round(spec.coils * perCoil);
  const { geometry, position, normal } = blank((steps + 1) * ROUND);
  geometry.setIndex(wireFaces(0, steps));
  geometry.userData.bent = true;
  const crossings = Array.from({ length: 2 * spec.coils }, (_, i) => perCoil * (i / 2 + 0.25));
  const { geometry: cut, position: cutAt, normal: front } = blank(crossings.length * ROUND);
  for (let k = 0; k < front.count; k++) front.setXYZ(k, 0, 0, 1);
  cut.setIndex(crossings.flatMap((_, i) => cap(i * ROUND, i % 2 === 0)));
  let current = -1;
  const setLength = (to: number): void => {
    if (Math.abs(to - current) < 1e-6) return;
    current = to;
    bend(spec, to, steps, position, normal);
    crossings.forEach((step, i) => {
      for (let j = 0; j < ROUND; j++) {
        const from = step * ROUND + j;
        cutAt.setXYZ(i * ROUND + j, position.getX(from), position.getY(from), 2e-5);
      }
    });
    for (const one of [position, normal, cutAt]) one.needsUpdate = true;
  };
  setLength(length);
  geometry.computeBoundingSphere();
  cut.computeBoundingSphere();
  return {
    geometry,
    cut,
    half: () => {
      const half = new BufferGeometry();
      for (const [name, attribute] of Object.entries(geometry.attributes)) half.setAttribute(name, attribute);
      half.setIndex(
        Array.from({ length: spec.coils }, (_, i) =>
          wireFaces(perCoil * (i + 0.25), perCoil * (i + 0.75)),
        ).flat(),
      );
      half.boundingSphere = geometry.boundingSphere;
      half.userData.bent = true;
      return half;
    },
    setLength,
  };
}

function blank(count: number): {
  geometry: BufferGeometry;
  position: Float32BufferAttribute;
  normal: Float32BufferAttribute;
} {
  const zeros = (width: number) => new Float32BufferAttribute(new Float32Array(count * width), width);
  const [position, normal] = [zeros(3), zeros(3)];
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', position);
  geometry.setAttribute('normal', normal);
  geometry.setAttribute('uv', zeros(2));
  return { geometry, position, normal };
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

/** The wire's skin from one step to another, and its two end faces. */
function wireFaces(from: number, to: number): number[] {
  const faces: number[] = [];
  for (let i = from; i < to; i++) {
    for (let j = 0; j < ROUND; j++) {
      const a = i * ROUND + j;
      const b = i * ROUND + ((j + 1) % ROUND);
      faces.push(a, a + ROUND, b, b, a + ROUND, b + ROUND);
    }
  }
  return [...faces, ...cap(from * ROUND, true), ...cap(to * ROUND, false)];
}

/** An end face of the wire over the ring of vertices at `at`; `start`: the end that the wire begins with. */
function cap(at: number, start: boolean): number[] {
  return Array.from({ length: ROUND - 2 }, (_, j) =>
    start ? [at, at + j + 1, at + j + 2] : [at, at + j + 2, at + j + 1],
  ).flat();
}
