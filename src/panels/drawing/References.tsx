import type { Ruler } from './layout.ts';
import type { PartsFitted } from './PumpDrawing.tsx';

interface Item {
  number: number;
  name: string;
  /** Where the leader ends, mm from axis and cam end, plunger seated. */
  at: readonly [number, number];
  isThere: boolean;
  /** What it goes up and down with. */
  rides: 'nothing' | 'plunger' | 'cup';
}

/** Numbered items on the right, leaders level so that none crosses another; the same numbers head the list. */
export function References({ mm, has, rides }: { mm: Ruler; has: PartsFitted; rides: Item['rides'] }) {
  return (
    <g className="references">
      {itemsOf(mm, has).map((item) => {
        const [x, y] = item.at;
        return item.isThere && item.rides === rides ? (
          <g key={item.name}>
            <line x1={x} x2={40} y1={-y} y2={-y} />
            <circle className="end" cx={x} cy={-y} r="0.6" />
            <circle cx="43" cy={-y} r="3.4" />
            <text x="43" y={-y + 1.5} textAnchor="middle">
              {item.number}
            </text>
          </g>
        ) : null;
      })}
    </g>
  );
}

/** The list that goes with the numbers, from the outlet down. The bench names the same parts by the same numbers. */
export function itemsOf(mm: Ruler, has: PartsFitted): readonly Item[] {
  const valve = mm('deliveryValve', 'from') + mm('deliveryValve', 'seatHeight') + 2;
  const still = 'nothing';
  return [
    { number: 1, name: 'delivery-valve holder', at: [5, 103], isThere: has.holder, rides: still },
    { number: 2, name: 'delivery valve', at: [2, valve], isThere: has.valve, rides: still },
    { number: 3, name: 'port', at: [5.2, mm('barrel', 'portCentre')], isThere: true, rides: still },
    { number: 4, name: 'barrel', at: [5, 47], isThere: true, rides: still },
    { number: 5, name: 'plunger', at: [2.4, 39], isThere: has.plunger, rides: still },
    { number: 6, name: 'return spring', at: [9.5, 31], isThere: has.returnSpring, rides: still },
    { number: 7, name: 'control pin', at: [17, mm('pin', 'height')], isThere: has.plunger, rides: 'plunger' },
    { number: 8, name: 'cup', at: [12, -1.4], isThere: has.cup, rides: 'cup' },
    { number: 15, name: 'camshaft', at: [8, -20], isThere: has.engine, rides: still },
  ];
}
