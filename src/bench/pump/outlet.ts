import type { BufferGeometry } from 'three';
import { type Dims, mm } from '../form/dims.ts';
import { hexagon, outline, rise } from '../form/extrude.ts';
import type { PartForm } from '../form/part.ts';
import { type Corner, threadSide } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { joined, painted } from '../look/paints.ts';
import { type Hatch, turned } from './turned.ts';

const HOLDER: Hatch = { angle: -Math.PI / 4, spacing: 1.3 * mm };
const SEAT: Hatch = { angle: Math.PI / 4, spacing: 0.8 * mm, light: true };

/** Delivery-valve holder: thread into the body, hexagon, union thread with its cone. */
export function holderForm(d: Dims): PartForm {
  const from = d('from');
  const to = from + d('length');
  const r = d('threadRadius');
  const u = d('unionRadius');
  const outside: Corner[] = [
    [d('boreRadius'), from],
    [r - 0.9 * mm, from],
    ...threadSide(r, 0.75 * mm, 1.5 * mm, from + 0.8 * mm, d('hexFrom') - 1.6 * mm),
    [r - 1 * mm, d('hexFrom'), 0],
    [d('hexAcross') / 2 - 0.5 * mm, d('hexFrom'), 0],
    [d('hexAcross') / 2 - 0.5 * mm, d('hexTo'), 0],
    [u - 0.7 * mm, d('hexTo'), 0],
    ...threadSide(u, 0.6 * mm, 1.25 * mm, d('hexTo') + 1.6 * mm, to - 3.4 * mm),
    [d('noseRadius'), to - 1.6 * mm, 0],
    [3 * mm, to, 0],
    [0.9 * mm, to - 1.6 * mm, 0],
    [0.9 * mm, d('hexTo') + 1 * mm, 0],
    [d('boreRadius'), d('hexTo') - 2 * mm, 0],
  ];
  const form = turned(outside, 'plainSteel', HOLDER, 0.3 * mm, 24);
  const hex = (): BufferGeometry =>
    painted(
      rise(outline(hexagon(d('hexAcross'))), d('hexTo') - d('hexFrom'), 0.8 * mm).translate(
        0,
        d('hexFrom'),
        0,
      ),
      'plainSteel',
    );
  return { ...form, whole: joined([form.whole, hex()]) };
}

/** Seat body of the delivery valve, clamped between barrel and holder. */
export function valveSeatForm(d: Dims): PartForm {
  const y = d('from');
  const top = y + d('seatHeight');
  return turned(
    [
      [d('guideRadius') + 0.08 * mm, y],
      [d('seatOuterRadius'), y],
      [d('seatOuterRadius'), top],
      [d('headRadius') + 0.5 * mm, top],
      [d('guideRadius') + 0.08 * mm, top - 1.6 * mm, 0],
    ],
    'groundSteel',
    SEAT,
    0.25 * mm,
    36,
  );
}

/** The delivery valve: fluted guide, unloading collar, cone, head and spigot for its spring. */
export function valveForm(d: Dims): BufferGeometry {
  const seat = d('from') + d('seatHeight') - 1.6 * mm;
  const collar = seat - d('collarHeight') - 0.9 * mm;
  const g = d('guideRadius');
  const bottom = collar - d('guideLength') + 4 * mm;
  const head = revolve(
    [
      [0, collar - 0.8 * mm, 0],
      [g - 0.8 * mm, collar - 0.8 * mm, 0],
      [g - 0.8 * mm, collar, 0],
      [g, collar, 0.15 * mm],
      [g, collar + d('collarHeight'), 0.15 * mm],
      [g - 0.5 * mm, collar + d('collarHeight'), 0],
      [g - 0.4 * mm, seat, 0],
      [d('headRadius'), seat + 1.5 * mm, 0],
      [d('headRadius'), seat + 1.5 * mm + d('headHeight') * 0.5, 0.3 * mm],
      [d('spigotRadius'), seat + 1.5 * mm + d('headHeight') * 0.5, 0],
      [d('spigotRadius'), seat + 1.5 * mm + d('headHeight') * 0.5 + d('spigotHeight'), 0.3 * mm],
      [0, seat + 1.5 * mm + d('headHeight') * 0.5 + d('spigotHeight'), 0],
    ],
    { segments: 28 },
  );
  const flutes = rise(
    outline(flutedSection(g, d('fluteRadius'))),
    collar - 0.6 * mm - bottom,
    0.2 * mm,
    1,
  ).translate(0, bottom, 0);
  return joined([painted(head, 'lappedSteel'), painted(flutes, 'lappedSteel')]);
}

/** Section of the guide: four lands on the guide's radius, four round flutes between. */
function flutedSection(guide: number, flute: number): (readonly [number, number])[] {
  return Array.from({ length: 64 }, (_, i) => {
    const a = (i / 64) * Math.PI * 2;
    const b = ((a + Math.PI / 4) % (Math.PI / 2)) - Math.PI / 4;
    const centre = guide + flute * 0.35;
    const away = Math.PI / 4 - Math.abs(b);
    const x = centre * Math.cos(away);
    const across = centre * Math.sin(away);
    const cut = across < flute ? x - Math.sqrt(flute * flute - across * across) : guide;
    const r = Math.min(guide, cut);
    return [r * Math.cos(a), r * Math.sin(a)] as const;
  });
}

/** Union nut of the high-pressure pipe, standing on its open end at height 0. */
export function pipeNutForm(d: Dims): PartForm {
  const length = d('nutLength');
  const r = d('nutAcross') / 2;
  const bore = d('outerDiameter') / 2 + 0.2 * mm;
  const hexTop = length * 0.62;
  const side: Corner[] = [
    [6.1 * mm, 0, 0],
    [r - 0.6 * mm, 0],
    [r - 0.6 * mm, hexTop],
    [r - 1.4 * mm, length],
    [bore, length],
    [bore, length - 5 * mm, 0],
    [6.1 * mm, length - 8 * mm, 0],
  ];
  const form = turned(side, 'zinc', HOLDER, 0.5 * mm, 28);
  const hex = painted(rise(outline(hexagon(d('nutAcross'))), hexTop, 0.9 * mm), 'zinc');
  return { ...form, whole: joined([form.whole, hex]) };
}

/** Hexagon nut with its washer below it, at height 0 upwards. */
export function flangeNutForm(d: Dims): BufferGeometry {
  const washer = revolve(
    [
      [0.0042, 0],
      [d('washerRadius'), 0],
      [d('washerRadius'), d('washerHeight')],
      [0.0042, d('washerHeight')],
    ],
    { segments: 28 },
  );
  const hex = rise(outline(hexagon(d('nutAcross'))), d('nutHeight'), 0.9 * mm).translate(
    0,
    d('washerHeight'),
    0,
  );
  return joined([painted(washer, 'zinc'), painted(hex, 'zinc')]);
}

/** Stud: rod with a threaded upper end. */
export function studForm(d: Dims): BufferGeometry {
  const r = d('radius');
  const side: Corner[] = [
    [0, -2 * mm, 0],
    [r - 0.3 * mm, -2 * mm, 0],
    [r - 0.3 * mm, 9 * mm, 0],
    ...threadSide(r, 0.55 * mm, 1.25 * mm, 9 * mm, d('height') - 0.8 * mm),
    [r - 1.2 * mm, d('height'), 0],
    [0, d('height'), 0],
  ];
  return painted(revolve(side, { segments: 12 }), 'plainSteel');
}

/** Bleed screw with hexagon head, its seat at height 0, head up. */
export function bleedScrewForm(d: Dims): BufferGeometry {
  const boss = revolve(
    [
      [0, -3 * mm],
      [5.2 * mm, -3 * mm],
      [5 * mm, 0],
      [0, 0],
    ],
    { segments: 20 },
  );
  const hex = rise(outline(hexagon(d('hexAcross'))), 4.6 * mm, 0.6 * mm).translate(0, 0.9 * mm, 0);
  const nose = revolve(
    [
      [0, 5 * mm],
      [2.6 * mm, 5 * mm],
      [2.2 * mm, 8.4 * mm],
      [0, 8.4 * mm],
    ],
    { segments: 16 },
  );
  const washer = revolve(
    [
      [0, 0],
      [5.6 * mm, 0],
      [5.6 * mm, 0.9 * mm],
      [0, 0.9 * mm],
    ],
    { segments: 20 },
  );
  void boss;
  return joined([painted(hex, 'zinc'), painted(nose, 'zinc'), painted(washer, 'copper')]);
}
