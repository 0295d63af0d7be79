import type { BufferGeometry } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { extrude, outline, rectangle, roundHole } from '../form/extrude.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';

/** The governor's fork about its pivot (height 0 there): `reach` is the pivot's depth below the pump's cam end. */
export function forkForm(d: Dims, slotWidth: number): BufferGeometry {
  const reach = d('pivotBelow');
  const w = d('width') / 2;
  const s = slotWidth / 2;
  const tip = d('tip') + reach;
  const bottom = d('slotBottom') + reach;
  const low = bottom - 4 * mm;
  const head = outline(
    [
      [-w, low],
      [w, low],
      [w, tip, 1 * mm],
      [s + 0.9 * mm, tip, 0.4 * mm],
      [s, tip - 1.6 * mm, 0.4 * mm],
      [s, bottom, 1.4 * mm],
      [-s, bottom, 1.4 * mm],
      [-s, tip - 1.6 * mm, 0.4 * mm],
      [-s - 0.9 * mm, tip, 0.4 * mm],
      [-w, tip, 1 * mm],
    ],
    0.6 * mm,
  );
  const stem = outline(
    [
      [-3.4 * mm, 0],
      [3.4 * mm, 0],
      [3.4 * mm, low - 4 * mm],
      [w, low + 1 * mm],
      [w, bottom - 0.6 * mm],
      [-w, bottom - 0.6 * mm],
      [-w, low + 1 * mm],
      [-3.4 * mm, low - 4 * mm],
    ],
    1 * mm,
  );
  const boss = revolve(
    [
      [3 * mm, -5 * mm],
      [6 * mm, -5 * mm],
      [6 * mm, 5 * mm],
      [3 * mm, 5 * mm],
    ],
    { segments: 16 },
  ).rotateX(Math.PI / 2);
  const middle = (d('stemFrom') + d('stemTo')) / 2;
  const neck = extrude(
    outline(rectangle(2 * w, bottom - low - 1 * mm, 0, (low + bottom) / 2)),
    d('stemTo') - d('headFrom') - 0.4 * mm,
    0.4 * mm,
  ).translate(0, 0, d('headFrom') + 0.2 * mm);
  const plate = outline(rectangle(9 * mm, 9 * mm), 4 * mm);
  plate.holes.push(roundHole(0, 0, 3 * mm));
  return joined([
    painted(
      extrude(head, d('headTo') - d('headFrom'), 0.35 * mm, 5).translate(0, 0, d('headFrom')),
      'plainSteel',
    ),
    painted(neck, 'plainSteel'),
    painted(
      extrude(stem, d('stemTo') - d('stemFrom'), 0.35 * mm, 5).translate(0, 0, d('stemFrom')),
      'plainSteel',
    ),
    painted(boss.translate(0, 0, middle), 'plainSteel'),
  ]);
}
