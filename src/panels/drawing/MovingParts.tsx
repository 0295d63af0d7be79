import type { RefObject } from 'react';
import { coilPath, cupFaces, plungerOutline, type Ruler, ring, valveOutline } from './layout.ts';
import type { PartsFitted } from './PumpDrawing.tsx';
import { References } from './References.tsx';

/** Elements that are moved directly, without a render. */
export interface MovingRefs {
  plunger: RefObject<SVGGElement | null>;
  cup: RefObject<SVGGElement | null>;
  spring: RefObject<SVGPathElement | null>;
  valve: RefObject<SVGPathElement | null>;
  chamber: RefObject<SVGRectElement | null>;
}

/** Plunger with pin and plate, cup, spring, delivery valve and the fuel above the plunger. */
export function MovingParts(props: { mm: Ruler; bore: number; has: PartsFitted; refs: MovingRefs }) {
  const { mm, bore, has, refs } = props;
  return (
    <>
      {has.plunger ? (
        <rect ref={refs.chamber} x={-bore} y={-mm('deliveryValve', 'from')} width={2 * bore} height="2" />
      ) : null}
      {has.returnSpring ? <path ref={refs.spring} className="solid" d={coilPath(mm, 0)} /> : null}
      {has.plunger ? (
        <g ref={refs.plunger}>
          <Plunger mm={mm} bore={bore} />
          <References mm={mm} has={has} rides="plunger" />
        </g>
      ) : null}
      {has.cup ? (
        <g ref={refs.cup}>
          <path className="cut cup" d={cupFaces(mm)} />
          <References mm={mm} has={has} rides="cup" />
        </g>
      ) : null}
      {has.valve ? <path ref={refs.valve} className="part" d={valveOutline(mm)} /> : null}
    </>
  );
}

/** The plunger seated: groove and helix at its crown, spring plate and control pin at its collar. */
function Plunger({ mm, bore }: { mm: Ruler; bore: number }) {
  const top = mm('plunger', 'to');
  const low = top - mm('plunger', 'helixHeight');
  const relief = top - mm('plunger', 'reliefHeight');
  const groove = mm('plunger', 'grooveWidth') / 2;
  const height = mm('pin', 'height');
  const half = mm('pin', 'diameter') / 2;
  const root = mm('pin', 'root');
  const plate = mm('springPlate', 'from');
  return (
    <>
      <path className="part plunger" d={plungerOutline(mm, bore)} />
      <path
        className="groove"
        d={`M${-groove} ${-top}H${groove}V${-low}L${bore} ${-(top - 2)}V${-relief}H${-bore}V${-low}H${-groove}Z`}
      />
      <path
        className="part"
        d={ring(
          mm('springPlate', 'hole'),
          mm('springPlate', 'radius'),
          plate,
          plate + mm('springPlate', 'thickness'),
        )}
      />
      <path
        className="part pin"
        d={`M${root} ${half - height}H${root + mm('pin', 'length')}V${-half - height}H${root}Z`}
      />
    </>
  );
}
