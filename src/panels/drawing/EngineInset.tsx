import { useRef } from 'react';
import { figure } from '../format.ts';
import { useFact, useJob } from '../useJob.ts';
import { useLive } from './useLive.ts';

/** From the piston's pin to its crown, and the crown's least distance from the head as drawn, mm. */
const CROWN = 36;
const GAP = 4;
/** The tank beside the cylinder, mm: left edge, width, height. */
const TANK = { x: 62, width: 26, height: 74 };

const degrees = (radians: number) => (radians * 180) / Math.PI;

/** Cylinder, piston and crank, the decompressor's hold on the valve, and the tank's level: what a picture would show. */
export function EngineInset() {
  const { session } = useJob();
  const { crank, supply } = session.definition;
  const throwOf = (crank.stroke / 2) * 1000;
  const rod = crank.rod * 1000;
  const half = (crank.bore / 2) * 1000;
  const head = -(throwOf + rod + CROWN + GAP);
  const piston = useRef<SVGPathElement>(null);
  const links = useRef<SVGPathElement>(null);
  const pin = useRef<SVGCircleElement>(null);
  const fuel = useRef<SVGRectElement>(null);
  const words = useRef<HTMLSpanElement>(null);
  const isHeld = useFact(({ control }) => control.decompressorHeld);
  const isRunning = useFact(({ engine }) => engine.running);

  useLive(() => {
    const { engine, supply: now } = session.shown();
    const x = throwOf * Math.sin(engine.theta);
    const y = -throwOf * Math.cos(engine.theta);
    const pinAt = y - Math.sqrt(rod * rod - x * x);
    piston.current?.setAttribute('transform', `translate(0 ${pinAt.toFixed(1)})`);
    links.current?.setAttribute('d', `M0 0L${x.toFixed(1)} ${y.toFixed(1)}L0 ${pinAt.toFixed(1)}`);
    pin.current?.setAttribute('cx', x.toFixed(1));
    pin.current?.setAttribute('cy', y.toFixed(1));
    const level = TANK.height * Math.min(1, now.tank / supply.tankVolume);
    fuel.current?.setAttribute('y', (head + TANK.height - level).toFixed(1));
    fuel.current?.setAttribute('height', level.toFixed(1));
    if (words.current !== null) {
      const angle = degrees(engine.theta);
      words.current.textContent = `${figure(Math.abs(angle))}° ${angle < 0 ? 'before' : 'after'} firing top`;
    }
  });

  return (
    <div className="inset engine-inset">
      <svg viewBox={`-48 ${head - 16} 140 ${-head + 58}`} role="img" aria-label="Piston, crank and tank">
        <path className="wall" d={`M${-half} ${-throwOf - 24}V${head}H${half}V${-throwOf - 24}`} />
        <path
          className="valve"
          d={`M-8 ${head + (isHeld ? 6 : 0)}H-28M-18 ${head + (isHeld ? 6 : 0)}V${head - 12}`}
        />
        <path ref={piston} className="part" d={`M${1 - half} ${-CROWN}H${half - 1}V22H${1 - half}Z`} />
        <circle className="part" r={throwOf + 8} />
        <path ref={links} className="links" />
        <circle ref={pin} className="part" r="6" />
        <circle className="part" r="7" />
        <rect ref={fuel} x={TANK.x} width={TANK.width} fill="url(#fuel-low)" />
        <rect className="wall" x={TANK.x} y={head} width={TANK.width} height={TANK.height} />
      </svg>
      <p>
        Crank <span ref={words} />, {isRunning ? 'running, ' : ''}decompressor{' '}
        {isHeld ? 'held open' : 'let go'}
      </p>
    </div>
  );
}
