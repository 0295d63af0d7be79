import type { SetDefinition } from '../../sim/set/definition.ts';

/** Reads a drawing dimension in mm; throws when the definition lacks it. */
export type Ruler = (part: string, key: string) => number;

export function rulerOf(def: SetDefinition): Ruler {
  return (part, key) => {
    const value = def.shapes[part]?.[key];
    if (value === undefined) throw new Error(`the set definition has no shapes.${part}.${key}`);
    return value * 1000;
  };
}

/** A corner of an outline: radius from the axis and height above the cam end, mm. */
export type Corner = readonly [radius: number, height: number];

/** An outline as an SVG path; side 1 draws the right half, -1 the left. Heights grow upwards. */
export const outline = (corners: readonly Corner[], side: 1 | -1 = 1): string =>
  `M${corners.map(([radius, height]) => `${(side * radius).toFixed(2)} ${(-height).toFixed(2)}`).join('L')}Z`;

/** A ring cut through the axis: both of its cut faces. */
export const ring = (inner: number, outer: number, from: number, to: number): string =>
  [1 as const, -1 as const]
    .map((side) =>
      outline(
        [
          [inner, from],
          [outer, from],
          [outer, to],
          [inner, to],
        ],
        side,
      ),
    )
    .join('');

/** A round bar seen from the side. */
export const bar = (radius: number, from: number, to: number): string =>
  outline([
    [-radius, from],
    [radius, from],
    [radius, to],
    [-radius, to],
  ]);

/** Cut face of the body: outside up, inside down, the window left out of the right half. */
export function bodyFaces(mm: Ruler): string {
  const top = mm('body', 'length');
  const flangeFrom = mm('body', 'flangeFromCamEnd');
  const flangeTo = flangeFrom + mm('body', 'flangeThickness');
  const bore = mm('body', 'bore');
  const bell = mm('body', 'bellRadius');
  const upper = mm('body', 'upperRadius');
  const inside: Corner[] = [
    [mm('body', 'threadRadius'), top],
    [mm('body', 'threadRadius'), mm('body', 'threadFrom')],
    [mm('body', 'barrelBore'), mm('body', 'threadFrom')],
    [mm('body', 'barrelBore'), mm('body', 'galleryTo')],
    [mm('body', 'galleryRadius'), mm('body', 'galleryTo')],
    [mm('body', 'galleryRadius'), mm('body', 'galleryFrom')],
    [mm('body', 'barrelBore'), mm('body', 'galleryFrom')],
    [mm('body', 'barrelBore'), mm('body', 'ledgeTo')],
    [mm('body', 'ledgeBore'), mm('body', 'ledgeTo')],
    [mm('body', 'ledgeBore'), mm('body', 'ledgeFrom')],
    [mm('body', 'springBore'), mm('body', 'ledgeFrom')],
    [mm('body', 'springBore'), mm('body', 'springBoreFrom')],
    [bore, mm('body', 'springBoreFrom')],
  ];
  const foot: Corner[] = [
    [bore, 0],
    [mm('body', 'pilotRadius'), 0],
    [mm('body', 'pilotRadius'), flangeFrom],
    [mm('body', 'flangeWidth') / 2, flangeFrom],
    [mm('body', 'flangeWidth') / 2, flangeTo],
    [bell, flangeTo],
  ];
  const shoulder: Corner[] = [
    [bell, mm('body', 'bellTop')],
    [upper, mm('body', 'bellTop')],
    [upper, top],
  ];
  const from = mm('body', 'windowFromCamEnd');
  const to = from + mm('body', 'windowHeight');
  const whole = outline([...foot, ...shoulder, ...inside], -1);
  // The window is a hole through the right half: two faces, one below it and one above.
  const below = outline([...foot, [bell, from], [bore, from]]);
  const above = outline([[bell, to], ...shoulder, ...inside, [bore, to]]);
  return whole + below + above;
}

/** Cut face of the delivery-valve holder. */
export function holderFaces(mm: Ruler): string {
  const from = mm('holder', 'from');
  const top = from + mm('holder', 'length');
  const half = mm('holder', 'hexAcross') / 2;
  const bore = mm('holder', 'boreRadius');
  const corners: Corner[] = [
    [bore, from],
    [mm('holder', 'threadRadius'), from],
    [mm('holder', 'threadRadius'), mm('holder', 'hexFrom')],
    [half, mm('holder', 'hexFrom')],
    [half, mm('holder', 'hexTo')],
    [mm('holder', 'unionRadius'), mm('holder', 'hexTo')],
    [mm('holder', 'unionRadius'), top - 4],
    [mm('holder', 'noseRadius'), top],
    [1.2, top],
    [1.2, top - 14],
    [bore, mm('valveSpring', 'from') + mm('valveSpring', 'length')],
  ];
  return outline(corners) + outline(corners, -1);
}

/** Cut face of the cup, plunger seated. */
export function cupFaces(mm: Ruler): string {
  const from = -mm('cup', 'proud');
  const shoulder = from + mm('cup', 'noseHeight');
  const inner = mm('cup', 'radius') - mm('cup', 'wall');
  const corners: Corner[] = [
    [0, from],
    [mm('cup', 'noseRadius'), from],
    [mm('cup', 'noseRadius'), shoulder],
    [mm('cup', 'radius'), shoulder],
    [mm('cup', 'radius'), from + mm('cup', 'height')],
    [inner, from + mm('cup', 'height')],
    [inner, shoulder + 1.5],
    [mm('cup', 'noseRadius') - mm('cup', 'wall'), from + mm('cup', 'floor')],
    [0, from + mm('cup', 'floor')],
  ];
  return outline(corners) + outline(corners, -1);
}

/** Outline of the plunger from foot to crown, seated. */
export function plungerOutline(mm: Ruler, boreRadius: number): string {
  const foot = -mm('cup', 'proud') + mm('cup', 'floor');
  const footTo = foot + mm('plunger', 'footThickness');
  return (
    bar(mm('plunger', 'footRadius'), foot, footTo) +
    bar(mm('plunger', 'neckRadius'), footTo, mm('plunger', 'collarFrom')) +
    bar(mm('plunger', 'collarRadius'), mm('plunger', 'collarFrom'), mm('plunger', 'collarTo')) +
    bar(boreRadius, mm('plunger', 'collarTo'), mm('plunger', 'to'))
  );
}

/** The delivery valve: cone, guide, collar and spigot, on its seat. */
export function valveOutline(mm: Ruler): string {
  const seat = mm('deliveryValve', 'from') + mm('deliveryValve', 'seatHeight');
  const head = mm('deliveryValve', 'headRadius');
  const guide = mm('deliveryValve', 'guideRadius');
  const headTo = seat + mm('deliveryValve', 'headHeight');
  return (
    outline([
      [-guide, seat],
      [guide, seat],
      [head, seat + 1.2],
      [head, headTo],
      [-head, headTo],
      [-head, seat + 1.2],
    ]) +
    bar(guide, seat - mm('deliveryValve', 'collarHeight'), seat) +
    bar(
      mm('deliveryValve', 'fluteRadius'),
      seat - mm('deliveryValve', 'guideLength') + 3,
      seat - mm('deliveryValve', 'collarHeight'),
    ) +
    bar(mm('deliveryValve', 'spigotRadius'), headTo, headTo + mm('deliveryValve', 'spigotHeight'))
  );
}

/** Two cut faces of the barrel with the port left open on both sides. */
export function barrelFaces(mm: Ruler, bore: number): string {
  const centre = mm('barrel', 'portCentre');
  const half = mm('barrel', 'portDiameter') / 2;
  const collar = mm('barrel', 'collarRadius');
  return (
    ring(bore, mm('barrel', 'lowerRadius'), mm('barrel', 'from'), mm('barrel', 'collarFrom')) +
    ring(bore, collar, mm('barrel', 'collarFrom'), centre - half) +
    ring(bore, collar, centre + half, mm('barrel', 'to'))
  );
}

/** A coil spring cut through its axis between two heights: its wires as one path of circles, all in mm. */
function coils(wire: number, mean: number, turns: number, low: number, high: number): string {
  const from = low + wire;
  const pitch = (high - wire - from) / turns;
  return Array.from({ length: Math.round(turns * 2) + 1 }, (_, half) => {
    const x = half % 2 === 0 ? mean : -mean;
    const y = -(from + (half / 2) * pitch);
    return `M${(x - wire).toFixed(2)} ${y.toFixed(2)}a${wire} ${wire} 0 1 0 ${2 * wire} 0a${wire} ${wire} 0 1 0 ${-2 * wire} 0`;
  }).join('');
}

const coilsOf = (mm: Ruler, spring: string, low: number, high: number): string =>
  coils(
    mm(spring, 'wire') / 2,
    mm(spring, 'meanDiameter') / 2,
    // a count, which the ruler has made a thousand of
    mm(spring, 'coils') / 1000,
    low,
    high,
  );

/** The return spring, its lower end risen by `rise` mm. */
export const coilPath = (mm: Ruler, rise: number): string =>
  coilsOf(mm, 'returnSpring', mm('returnSpring', 'installedFrom') + rise, mm('body', 'ledgeFrom'));

/** The spring on the delivery valve, the valve risen by `rise` mm. */
export function valveCoilPath(mm: Ruler, rise: number): string {
  const from = mm('valveSpring', 'from');
  return coilsOf(mm, 'valveSpring', from + rise, from + mm('valveSpring', 'length'));
}

/** The passage from the delivery valve's seat to the end of the holder. */
export function holderPassage(mm: Ruler): string {
  const top = mm('holder', 'from') + mm('holder', 'length');
  const bore = mm('holder', 'boreRadius');
  const half: Corner[] = [
    [0, mm('holder', 'from')],
    [bore, mm('holder', 'from')],
    [bore, mm('valveSpring', 'from') + mm('valveSpring', 'length')],
    [1.2, top - 14],
    [1.2, top],
    [0, top],
  ];
  return outline(half) + outline(half, -1);
}
