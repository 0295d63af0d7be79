import type { Placed } from './layout.ts';

/** One line of the list that stands beside the picture. */
export type Line = { readonly number: number; readonly name: string; readonly placed: Placed };

/** The page's own elements for names and leaders; written directly, never through React. */
export type NameBoard = {
  /** Height of a row and width of a label for a picture so wide, px. */
  type(width: number): { row: number; widthOf: (name: string) => number };
  show(lines: readonly Line[], size: { width: number; height: number }): void;
  /** Moves the end of a number's leader. */
  point(number: number, x: number, y: number): void;
  hide(hidden: boolean): void;
  clear(): void;
};

const SVG = 'http://www.w3.org/2000/svg';
/** Pictures narrower than this get small type, px. */
const NARROW = 560;
const FAMILY = '"Atkinson Hyperlegible Next", system-ui, sans-serif';
/** Circle, its gap to the name, and the edges of a label, px. */
const BESIDE = { narrow: 28, wide: 36 };

type Leader = {
  readonly casing: SVGLineElement;
  readonly line: SVGLineElement;
  readonly dot: SVGCircleElement;
};

/** Makes the board within an element of the page. */
export function nameBoard(place: HTMLElement): NameBoard {
  const drawing = document.createElementNS(SVG, 'svg');
  const list = document.createElement('ol');
  list.setAttribute('aria-label', 'Parts in the picture');
  drawing.setAttribute('aria-hidden', 'true');
  const leaders = new Map<number, Leader>();
  const pen = document.createElement('canvas').getContext('2d');
  const measure = (text: string): number => pen?.measureText(text).width ?? 8 * text.length;
  let shown = '';
  const clear = (): void => {
    if (shown === '' && list.childElementCount === 0) return;
    shown = '';
    leaders.clear();
    drawing.replaceChildren();
    list.replaceChildren();
    place.replaceChildren();
  };
  return {
    type(width) {
      const narrow = width < NARROW;
      place.dataset.type = narrow ? 'narrow' : 'wide';
      if (pen !== null) pen.font = `${narrow ? 11.5 : 14}px ${FAMILY}`;
      const beside = narrow ? BESIDE.narrow : BESIDE.wide;
      return {
        row: narrow ? 29 : 25,
        widthOf: (name) => Math.ceil((narrow ? twoLines(name, measure) : measure(name)) + beside),
      };
    },
    show(lines, size) {
      const key = JSON.stringify(lines.map(({ number, placed }) => [number, placed.side, placed.to]));
      if (key !== shown) {
        shown = key;
        leaders.clear();
        drawing.setAttribute('viewBox', `0 0 ${size.width} ${size.height}`);
        const made = lines.map(({ number, placed }) => {
          const leader = leaderOf(placed);
          leaders.set(number, leader);
          return leader;
        });
        // All casings under all lines, so that none cuts into another.
        drawing.replaceChildren(
          ...made.map(({ casing }) => casing),
          ...made.flatMap(({ line, dot }) => [line, dot]),
        );
        list.replaceChildren(...[...lines].sort((a, b) => a.number - b.number).map(entryOf));
        place.replaceChildren(drawing, list);
      }
      for (const { number, placed } of lines) aim(leaders.get(number), placed.from.x, placed.from.y);
      place.dataset.shown = 'true';
    },
    point: (number, x, y) => aim(leaders.get(number), x, y),
    hide(hidden) {
      place.dataset.shown = String(!hidden && shown !== '');
    },
    clear,
  };
}

/** Names shorter than this stay on one line, px. */
const SHORT = 62;

/** Width of a name broken into two lines where that is narrowest. */
function twoLines(name: string, measure: (text: string) => number): number {
  const whole = measure(name);
  if (whole <= SHORT) return whole;
  const breaks = [...name.matchAll(/[ -]/g)].map(({ index }) => index + 1);
  return Math.min(
    whole,
    ...breaks.map((i) => Math.max(measure(name.slice(0, i).trimEnd()), measure(name.slice(i)))),
  );
}

function entryOf({ number, name, placed }: Line): HTMLLIElement {
  const entry = document.createElement('li');
  entry.value = number;
  entry.dataset.side = placed.side;
  entry.style.transform = `translate(${placed.x}px, ${placed.y}px)`;
  entry.style.width = `${placed.width}px`;
  const circle = document.createElement('b');
  circle.textContent = String(number);
  const words = document.createElement('span');
  words.textContent = name;
  entry.append(circle, words);
  return entry;
}

function leaderOf({ to }: Placed): Leader {
  const line = (name: string): SVGLineElement => {
    const made = document.createElementNS(SVG, 'line');
    made.setAttribute('class', name);
    made.setAttribute('x2', String(to.x));
    made.setAttribute('y2', String(to.y));
    return made;
  };
  const dot = document.createElementNS(SVG, 'circle');
  dot.setAttribute('r', '2.6');
  return { casing: line('casing'), line: line('line'), dot };
}

function aim(leader: Leader | undefined, x: number, y: number): void {
  if (leader === undefined) return;
  for (const one of [leader.casing, leader.line]) {
    one.setAttribute('x1', x.toFixed(1));
    one.setAttribute('y1', y.toFixed(1));
  }
  leader.dot.setAttribute('cx', x.toFixed(1));
  leader.dot.setAttribute('cy', y.toFixed(1));
}
