import type { Manifold } from 'manifold-3d';
import type { Definition } from '../definition.ts';
import { dressed, type Shop, type SurfaceId } from '../kernel.ts';
import { block, loft, type Spot } from '../shapes.ts';

/** A helical spring with closed and ground ends; lengths m. */
export type SpringSpec = { readonly wire: number; readonly mean: number; readonly coils: number };

/** Height of the wire's centre after `turns` of its coils: a closed coil at each end, the rest evenly pitched, m. */
export function wireHeight(spec: SpringSpec, turns: number, length: number): number {
  const { wire, coils } = spec;
  const closed = Math.min(wire, length / coils);
  if (turns < 1) return closed * turns;
  if (turns > coils - 1) return length - closed * (coils - turns);
  return closed + ((length - 2 * closed) / (coils - 2)) * (turns - 1);
}

/** The wire swept along its coil to an overall `length` (m), standing on y = 0, both ends ground flat. */
export function springSolid(shop: Shop, spec: SpringSpec, length: number, surface: SurfaceId): Manifold {
  const steps = Math.round(spec.coils * 24);
  const sections = Array.from({ length: steps + 1 }, (_, i): Spot[] => {
    const turns = (spec.coils * i) / steps;
    const sin = Math.sin(turns * 2 * Math.PI);
    const cos = Math.cos(turns * 2 * Math.PI);
    const y = wireHeight(spec, turns, length);
    return Array.from({ length: 10 }, (_, j): Spot => {
      const a = (j / 10) * 2 * Math.PI;
      // Hair's breadth less than the wire, so that closed coils lie on one another without melting together.
      const half = spec.wire * 0.4975;
      const r = spec.mean / 2 + Math.cos(a) * half;
      return [r * sin, y - Math.sin(a) * half, r * cos];
    });
  });
  const wide = spec.mean;
  const ends = block(shop, [-wide, 0, -wide], [wide, length, wide], surface);
  return dressed(shop, loft(shop, sections), surface, 'flat').intersect(ends);
}

/** Wire, mean diameter and coils of the return spring. */
export function returnSpringSpec({ shapes: { returnSpring: d } }: Definition): SpringSpec {
  return { wire: d.wire, mean: d.meanDiameter, coils: d.coils };
}

/** Wire, mean diameter and coils of the delivery valve's spring. */
export function valveSpringSpec({ shapes: { valveSpring: d } }: Definition): SpringSpec {
  return { wire: d.wire, mean: d.meanDiameter, coils: d.coils };
}

/** Room for the return spring between its two seats at no travel, m. */
export function springRoom({ shapes: { body, returnSpring } }: Definition): number {
  return body.ledgeFrom - returnSpring.installedFrom;
}

/** Free length of the return spring, from its room and preload over its rate G d^4 / 8 D^3 n, m. */
export function springFree(def: Definition): number {
  const { wire, meanDiameter, activeCoils, shearModulus, preload } = def.spring;
  const rate = (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * activeCoils);
  return springRoom(def) + preload / rate;
}
