import { barrelFaces, bodyFaces, holderFaces, type Ruler, ring } from './layout.ts';
import type { PartsFitted } from './PumpDrawing.tsx';

/** Everything of the section that does not move, cut faces hatched. */
export function FixedParts({ mm, bore, has }: { mm: Ruler; bore: number; has: PartsFitted }) {
  const valveFrom = mm('deliveryValve', 'from');
  const retainerFrom = mm('retainer', 'from');
  return (
    <>
      <line className="axis" x1="0" x2="0" y1="-118" y2={has.engine ? 40 : 8} />
      <path className="cut body" d={bodyFaces(mm)} />
      <path
        fill="url(#fuel-low)"
        d={ring(
          mm('barrel', 'collarRadius'),
          mm('body', 'galleryRadius'),
          mm('body', 'galleryFrom'),
          mm('body', 'galleryTo'),
        )}
      />
      <path className="cut barrel" d={barrelFaces(mm, bore)} />
      {has.retainer ? (
        <path
          className="solid"
          d={ring(
            mm('retainer', 'innerRadius'),
            mm('retainer', 'outerRadius'),
            retainerFrom,
            retainerFrom + mm('retainer', 'thickness'),
          )}
        />
      ) : null}
      {has.valve ? (
        <path
          className="cut seat"
          d={ring(
            mm('deliveryValve', 'guideRadius'),
            mm('deliveryValve', 'seatOuterRadius'),
            valveFrom,
            valveFrom + mm('deliveryValve', 'seatHeight'),
          )}
        />
      ) : null}
      {has.holder ? <path className="cut holder" d={holderFaces(mm)} /> : null}
    </>
  );
}
