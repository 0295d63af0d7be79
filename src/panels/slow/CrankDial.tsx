import { type PointerEvent, type RefObject, useRef } from 'react';

const SIZE = 100;
const HANDLE = 34;

/** The crank seen from the end that it is turned at, its handle to be led round; the slider says the same to keys. */
export function CrankDial({
  arm,
  onTurn,
}: {
  arm: RefObject<SVGGElement | null>;
  /** By how much it is turned, rad, positive in the running sense. */
  onTurn: (by: number) => void;
}) {
  const last = useRef<number | null>(null);
  const angleOf = (event: PointerEvent<SVGSVGElement>): number => {
    const box = event.currentTarget.getBoundingClientRect();
    const x = event.clientX - box.left - box.width / 2;
    const y = event.clientY - box.top - box.height / 2;
    return Math.atan2(x, -y);
  };
  const onMove = (event: PointerEvent<SVGSVGElement>) => {
    if (last.current === null) return;
    const now = angleOf(event);
    const by = now - last.current;
    last.current = now;
    onTurn(by - 2 * Math.PI * Math.round(by / (2 * Math.PI)));
  };
  const letGo = () => {
    last.current = null;
  };
  return (
    <svg
      className="crank-dial"
      viewBox={`${-SIZE / 2} ${-SIZE / 2} ${SIZE} ${SIZE}`}
      aria-hidden="true"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        last.current = angleOf(event);
      }}
      onPointerMove={onMove}
      onPointerUp={letGo}
      onPointerCancel={letGo}
    >
      <circle className="crank-rim" r="44" />
      <path className="crank-top" d="M0 -48V-40" />
      <g ref={arm}>
        <path className="crank-arm" d={`M-5 9L-3.4 ${-HANDLE}H3.4L5 9Z`} />
        <circle className="crank-shaft" r="7.5" />
        <circle className="crank-handle" cy={-HANDLE} r="8.5" />
      </g>
    </svg>
  );
}
