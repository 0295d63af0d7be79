import { useRef } from 'react';
import { figure } from '../format.ts';
import { useFact, useJob } from '../useJob.ts';
import { useLive } from './useLive.ts';

const degrees = (radians: number) => (radians * 180) / Math.PI;

/** Pin and fork seen along the axis from the cam end: where the plunger is turned, and where the fork would have it. */
export function ControlInset() {
  const { session, core } = useJob();
  const pin = useRef<SVGGElement>(null);
  const fork = useRef<SVGGElement>(null);
  const read = useRef<HTMLElement>(null);
  const isOn = useFact(({ pump }) => pump.rest === null);
  const hasPlunger = useFact(({ assembly }) => assembly.parts.plunger === 'fitted');

  useLive(() => {
    const pose = core.pumpPose(session.definition, session.shown());
    pin.current?.setAttribute('transform', `rotate(${(-degrees(pose.turn)).toFixed(1)})`);
    fork.current?.setAttribute('transform', `rotate(${(-degrees(pose.forkTurn)).toFixed(1)})`);
    if (read.current !== null) {
      read.current.textContent = `pin ${figure(degrees(pose.turn))}°, fork ${figure(degrees(pose.forkTurn))}°`;
    }
  });

  return (
    <div className="inset">
      <svg viewBox="-8 -17 36 34" role="img" aria-label="Control pin and fork, seen along the axis">
        <line className="axis" x1="0" x2="26" y1="0" y2="0" />
        <circle r="3.5" className="part" />
        {hasPlunger ? (
          <g ref={pin}>
            <path d="M0 -1.25H18V1.25H0Z" className="part pin" />
            <path d="M-3 -0.5H3V0.5H-3Z" className="groove" />
          </g>
        ) : null}
        {isOn ? (
          <g ref={fork}>
            <path d="M14 -1.6H24V-5H14ZM14 1.6H24V5H14Z" className="solid" />
          </g>
        ) : null}
      </svg>
      <p>
        Turn from no fuel: <span ref={read} className="figures" />
        {isOn ? '' : ' (the pump is off, the fork stays on the engine)'}
      </p>
    </div>
  );
}
