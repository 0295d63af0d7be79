import type { Ruler } from './layout.ts';
import type { PartsFitted } from './PumpDrawing.tsx';

interface Item {
  name: string;
  /** Where the leader ends, mm from axis and cam end. */
  at: readonly [number, number];
  isThere: boolean;
}

/** Numbered items on the right, leaders level so that none crosses another; the same numbers head the list. */
export function References({ mm, has }: { mm: Ruler; has: PartsFitted }) {
  return (
    <g className="references">
      {itemsOf(mm, has).map(({ name, at: [x, y], isThere }, index) =>
        isThere ? (
          <g key={name}>
            <line x1={x} x2={40} y1={-y} y2={-y} />
            <circle className="end" cx={x} cy={-y} r="0.6" />
            <circle cx="43" cy={-y} r="3.4" />
            <text x="43" y={-y + 1.5} textAnchor="middle">
              {index + 1}
            </text>
          </g>
        ) : null,
      )}
    </g>
  );
}

/** The list that goes with the numbers, from the outlet down. */
export function itemsOf(mm: Ruler, has: PartsFitted): readonly Item[] {
  return [
    { name: 'delivery-valve holder', at: [5, 103], isThere: has.holder },
    {
      name: 'delivery valve',
      at: [2, mm('deliveryValve', 'from') + mm('deliveryValve', 'seatHeight') + 2],
      isThere: has.valve,
    },
    { name: 'port', at: [5.2, mm('barrel', 'portCentre')], isThere: true },
    { name: 'barrel', at: [5, 45], isThere: true },
    { name: 'plunger', at: [2.4, 36], isThere: has.plunger },
    { name: 'return spring', at: [9.5, 28], isThere: has.returnSpring },
    { name: 'control pin', at: [17, mm('pin', 'height') + 3.6], isThere: has.plunger },
    { name: 'cup', at: [12, -1.4], isThere: has.cup },
  ];
}
