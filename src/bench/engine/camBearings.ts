import type { BufferGeometry } from 'three';
import { mm } from '../form/dims.ts';
import { extrude, hexagon, outline, rectangle, rise } from '../form/extrude.ts';
import { type Corner, ring } from '../form/profile.ts';
import { revolve } from '../form/revolve.ts';
import { hatched, joined, painted } from '../look/paints.ts';

/** What the bearings of the camshaft stand in: heights and lengths, engine coordinates, m. */
export type BearingPlaces = {
  readonly height: number;
  readonly front: number;
  readonly halfLength: number;
  readonly journalRadius: number;
  /** Length of a journal. */
  readonly journal: number;
  readonly roof: number;
};

/** Thickness of the deck away from the pump's boss, m. */
export const ROOF = 8 * mm;
const BUSH = 2.6 * mm;
const BOSS = 17 * mm;
const CAP = 2.4 * mm;
const CAP_RADIUS = 20 * mm;
/** Inside and outside of the hump over the gear. */
const HUMP = { inner: 24.2 * mm, outer: 28.5 * mm, from: -71 * mm, to: -44 * mm } as const;

/** How far round: all, what lies behind the section, or only what stands above the deck. */
type Round = 'all' | 'back' | 'top' | 'topBack';
const spans: Readonly<Record<Round, { from?: number; length?: number }>> = {
  all: {},
  back: { from: Math.PI / 2, length: Math.PI },
  top: { from: Math.PI, length: Math.PI },
  topBack: { from: Math.PI, length: Math.PI / 2 },
};

/** Turns a profile about the camshaft's axis. */
function aboutShaft(p: BearingPlaces, profile: readonly Corner[], round: Round): BufferGeometry {
  return revolve(profile, { ...spans[round], segments: 30, chamfer: 0.5 * mm })
    .rotateZ(-Math.PI / 2)
    .translate(0, p.height, p.front);
}

/** Bearing caps on both side walls, each with its two screws. */
export function bearingCaps(p: BearingPlaces): BufferGeometry[] {
  return [-1, 1].flatMap((s) => {
    const from = s > 0 ? p.halfLength : -p.halfLength - CAP;
    const screws = [-1, 1].map((k) =>
      painted(
        extrude(outline(hexagon(7 * mm)), 3.2 * mm, 0.4 * mm)
          .rotateY((s * Math.PI) / 2)
          .translate(s * (p.halfLength + CAP), p.height, p.front + k * 15 * mm),
        'zinc',
      ),
    );
    return [painted(aboutShaft(p, ring(0, CAP_RADIUS, from, from + CAP), 'all'), 'castAluminium'), ...screws];
  });
}

/** Hump of the deck over the gear, whole or its back half; closed at both ends. */
export function gearHump(p: BearingPlaces, back: boolean): BufferGeometry[] {
  const { inner, outer, from, to } = HUMP;
  const round = back ? 'topBack' : 'top';
  const ends = [from, to - 3 * mm].map((x) => aboutShaft(p, ring(0, outer - 0.6 * mm, x, x + 3 * mm), round));
  const hump = [aboutShaft(p, ring(inner, outer, from, to), round), ...ends].map((g) => painted(g, 'sage'));
  return back ? hump : [...hump, ...humpRim(p)];
}

/** Rim of the gear's cover on the deck, with its four screws. */
function humpRim(p: BearingPlaces): BufferGeometry[] {
  const deck = p.roof + ROOF;
  const middle = (HUMP.from + HUMP.to) / 2;
  const half = (HUMP.to - HUMP.from) / 2;
  const chord = Math.sqrt(HUMP.outer ** 2 - (deck - p.height) ** 2);
  const rim = rise(outline(rectangle(2 * half + 4 * mm, 2 * chord + 11 * mm), 4 * mm), 1.8 * mm, 0.5 * mm);
  const screws = [-1, 1].flatMap((sx) =>
    [-1, 1].map((sz) =>
      painted(
        rise(outline(hexagon(5.5 * mm)), 3 * mm, 0.4 * mm).translate(
          middle + sx * (half - 4 * mm),
          deck + 1.6 * mm,
          p.front + sz * (chord + 2.2 * mm),
        ),
        'zinc',
      ),
    ),
  );
  return [painted(rim.translate(middle, deck - 0.2 * mm, p.front), 'sage'), ...screws];
}

/** Bosses and bronze bushes in the side walls, behind the section. */
export function bearingHalves(p: BearingPlaces): BufferGeometry[] {
  const inner = p.halfLength - p.journal;
  return [-1, 1].flatMap((s) => {
    const [from, to] = s > 0 ? [inner, p.halfLength - 1 * mm] : [-p.halfLength + 1 * mm, -inner];
    const bush = p.journalRadius + BUSH;
    return [
      painted(aboutShaft(p, ring(bush, BOSS, from, to), 'back'), 'castIron', 0.9),
      painted(aboutShaft(p, ring(p.journalRadius + 0.1 * mm, bush, from - 0.6 * mm, to), 'back'), 'brass'),
    ];
  });
}

/** Flat cut faces of bosses, bushes, caps and hump, in the plane of the camshaft's axis. */
export function bearingCuts(p: BearingPlaces, angle: number, spacing: number): BufferGeometry {
  const box = (x0: number, x1: number, y0: number, y1: number): BufferGeometry =>
    extrude(outline(rectangle(x1 - x0, y1 - y0, (x0 + x1) / 2, (y0 + y1) / 2)), 0.02 * mm, 0).translate(
      0,
      0,
      p.front + 0.01 * mm,
    );
  const r = p.journalRadius;
  const inner = p.halfLength - p.journal;
  const out: BufferGeometry[] = [];
  for (const s of [-1, 1]) {
    const [x0, x1] = s > 0 ? [inner, p.halfLength] : [-p.halfLength, -inner];
    out.push(hatched(box(x0, x1, p.height + r + BUSH, p.roof), angle, spacing));
    out.push(hatched(box(x0, x1, p.height - BOSS, p.height - r - BUSH), angle, spacing));
    for (const k of [-1, 1]) {
      const near = p.height + k * r;
      const far = p.height + k * (r + BUSH);
      out.push(hatched(box(x0, x1, Math.min(near, far), Math.max(near, far)), -angle, 1.1 * mm, true));
    }
    const cap = s > 0 ? p.halfLength : -p.halfLength - CAP;
    out.push(
      hatched(box(cap, cap + CAP, p.height - CAP_RADIUS, p.height + CAP_RADIUS - 5 * mm), -angle, 1.2 * mm),
    );
  }
  const { inner: low, outer: high, from, to } = HUMP;
  out.push(hatched(box(from, to, p.height + low, p.height + high), angle, spacing));
  for (const x of [from, to - 3 * mm])
    out.push(hatched(box(x, x + 3 * mm, p.roof - 0.4 * mm, p.height + low), angle, spacing));
  return joined(out);
}

/** The stretch of the deck that the hump takes the place of, x from and to, m. */
export const humpSpan = [HUMP.from, HUMP.to] as const;
