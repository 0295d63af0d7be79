import type { RefObject } from 'react';
import type { SetDefinition } from '../../sim/set/definition.ts';
import { Bubbles } from './Bubbles.tsx';
import { camOutline } from './camLayout.ts';
import { holderPassage, type Ruler, valveCoilPath } from './layout.ts';

/** Elements of the line that are changed directly, without a render. */
export interface LineRefs {
  fuel: RefObject<SVGPathElement | null>;
  air: RefObject<SVGGElement | null>;
  spring: RefObject<SVGPathElement | null>;
}

/** Middles of the bubbles in the line, from its far end. */
const LINE_AIR = [
  [0, 110.5],
  [0, 104.5],
  [0.1, 99.6],
  [0.6, 95],
  [-1.4, 93.4],
  [2.2, 91.5],
] as const;
/** Middles of the bubbles in the chamber, from under the valve down. */
export const CHAMBER_AIR = [
  [-1.9, 65.2],
  [1.2, 65.3],
  [-0.4, 64.6],
  [2.5, 64.5],
  [-2.6, 64],
  [0.8, 63.6],
] as const;

/** What is above the delivery valve: the fuel of the line, its air, the valve's spring. */
export function LineParts({ mm, refs }: { mm: Ruler; refs: LineRefs }) {
  return (
    <>
      <path ref={refs.fuel} d={holderPassage(mm)} />
      <path ref={refs.spring} className="solid" d={valveCoilPath(mm, 0)} />
      <Bubbles group={refs.air} at={LINE_AIR} radius={0.85} />
    </>
  );
}

/** The cam with its shaft, seen along it, nose up until it is turned. */
export function Cam(props: { def: SetDefinition; mm: Ruler; group: RefObject<SVGGElement | null> }) {
  const { def, mm, group } = props;
  return (
    <g ref={group}>
      <path className="part cam" d={camOutline(def)} />
      <circle className="part" r={mm('camshaft', 'radius') - 3} />
      <path className="axis" d="M0 -24V20M-20 0H20" />
    </g>
  );
}
