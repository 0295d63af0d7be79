import type { RefObject } from 'react';

/** Shares of a passage that is air from which one more bubble is drawn. */
const FROM = [0.0005, 0.03, 0.1, 0.2, 0.35, 0.6];

/** Air as bubbles with outlines, as many as there is air; at: their middles, mm from the axis and the cam end. */
export function Bubbles(props: {
  group: RefObject<SVGGElement | null>;
  at: readonly (readonly [x: number, height: number])[];
  radius: number;
}) {
  return (
    <g ref={props.group} className="bubbles">
      {props.at.map(([x, height]) => (
        <circle key={`${x} ${height}`} cx={x} cy={-height} r={props.radius} visibility="hidden" />
      ))}
    </g>
  );
}

/** Shows as many bubbles as a share of air (0..1) asks for. */
export function showBubbles(group: SVGGElement | null, share: number): void {
  if (group === null) return;
  [...group.children].forEach((bubble, at) => {
    bubble.setAttribute('visibility', share > (FROM[at] ?? 1) ? 'visible' : 'hidden');
  });
}
