import { useRef } from 'react';
import { figure } from '../format.ts';
import { useFact, useJob } from '../useJob.ts';
import { ControlInset } from './ControlInset.tsx';
import { FixedParts } from './FixedParts.tsx';
import { coilPath, rulerOf } from './layout.ts';
import { MovingParts, type MovingRefs } from './MovingParts.tsx';
import { Patterns } from './Patterns.tsx';
import { itemsOf, References } from './References.tsx';
import { useLive } from './useLive.ts';
import './drawing.css';

const VIEW = '-46 -120 98 130';

/**
 * A section through the pump along its axis, drawn from the same lengths and the same state as the model.
 * What stands still and what moves are two pictures, one over the other, so that little is painted again.
 */
export function PumpDrawing() {
  const { session, core } = useJob();
  const def = session.definition;
  const mm = rulerOf(def);
  const has = usePartsFitted();
  const refs: MovingRefs = {
    plunger: useRef<SVGGElement>(null),
    cup: useRef<SVGGElement>(null),
    spring: useRef<SVGPathElement>(null),
    valve: useRef<SVGPathElement>(null),
    chamber: useRef<SVGRectElement>(null),
  };
  const travel = useRef<HTMLElement>(null);

  useLive(() => {
    const pose = core.pumpPose(def, session.shown());
    const rise = pose.plungerTravel * 1000;
    lift(refs.plunger.current, rise);
    lift(refs.cup.current, pose.cupTravel * 1000);
    lift(refs.valve.current, pose.valveLift * 1000);
    refs.spring.current?.setAttribute('d', coilPath(mm, rise));
    const room = mm('deliveryValve', 'from') - mm('plunger', 'to') - rise;
    refs.chamber.current?.setAttribute('height', Math.max(0.2, room).toFixed(2));
    refs.chamber.current?.setAttribute('fill', fuelFill(session.shown().pump.pressure));
    if (travel.current !== null) travel.current.textContent = figure(rise, 2);
  });

  return (
    <figure className="drawing">
      <div className="section">
        <svg viewBox={VIEW} role="img" aria-label="Section through the pump">
          <Patterns />
          <FixedParts mm={mm} bore={(def.pump.plungerDiameter * 1000) / 2} has={has} />
          <References mm={mm} has={has} rides="nothing" />
        </svg>
        <svg viewBox={VIEW} aria-hidden="true" className="moving">
          <MovingParts mm={mm} bore={(def.pump.plungerDiameter * 1000) / 2} has={has} refs={refs} />
        </svg>
      </div>
      <div className="drawing-side">
        <figcaption>
          <span className="drawing-what">Section through the pump, cam end down. </span>
          Plunger travel{' '}
          <span ref={travel} className="figures">
            0.00
          </span>{' '}
          of {figure(def.pump.topStop * 1000, 1)} mm.
        </figcaption>
        <ControlInset />
        <ol className="drawing-list">
          {itemsOf(mm, has).map(({ name, isThere }, index) =>
            isThere ? (
              <li key={name} data-number={index + 1}>
                {name}
              </li>
            ) : null,
          )}
        </ol>
      </div>
    </figure>
  );
}

function lift(element: SVGElement | null, rise: number): void {
  element?.setAttribute('transform', `translate(0 ${(-rise).toFixed(2)})`);
}

/** Fuel pressure shows in the tint and in how dense its dots are. */
function fuelFill(pressure: number): string {
  if (pressure > 8e6) return 'url(#fuel-high)';
  return pressure > 5e5 ? 'url(#fuel-middle)' : 'url(#fuel-low)';
}

/** What of the pump is in place. */
export interface PartsFitted {
  plunger: boolean;
  cup: boolean;
  retainer: boolean;
  returnSpring: boolean;
  valve: boolean;
  holder: boolean;
}

function usePartsFitted(): PartsFitted {
  const fitted = useFact(({ assembly }) =>
    Object.entries(assembly.parts)
      .filter(([, where]) => where === 'fitted')
      .map(([part]) => part)
      .join(' '),
  ).split(' ');
  return {
    plunger: fitted.includes('plunger'),
    cup: fitted.includes('cup'),
    retainer: fitted.includes('retainer'),
    returnSpring: fitted.includes('returnSpring'),
    valve: fitted.includes('valve'),
    holder: fitted.includes('holder'),
  };
}
