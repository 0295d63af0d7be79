import { useRef } from 'react';
import { figure } from '../format.ts';
import { useFact, useJob } from '../useJob.ts';
import { Bubbles, showBubbles } from './Bubbles.tsx';
import { ControlInset } from './ControlInset.tsx';
import { camAxis } from './camLayout.ts';
import { EngineInset } from './EngineInset.tsx';
import { FixedParts } from './FixedParts.tsx';
import { airShares, fuelFill } from './fuel.ts';
import { Cam, CHAMBER_AIR, LineParts, type LineRefs } from './LineParts.tsx';
import { coilPath, rulerOf, valveCoilPath } from './layout.ts';
import { MovingParts, type MovingRefs } from './MovingParts.tsx';
import { NozzleInset } from './NozzleInset.tsx';
import { Patterns } from './Patterns.tsx';
import { itemsOf, References } from './References.tsx';
import { useLive } from './useLive.ts';
import './drawing.css';

/** What is drawn, mm: the loose pump, and the pump on the engine with the cam beneath it. */
const LOOSE = '-46 -120 98 130';
const ON_ENGINE = '-46 -120 98 161';

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
  const line: LineRefs = {
    fuel: useRef<SVGPathElement>(null),
    air: useRef<SVGGElement>(null),
    spring: useRef<SVGPathElement>(null),
  };
  const chamberAir = useRef<SVGGElement>(null);
  const cam = useRef<SVGGElement>(null);
  const travel = useRef<HTMLElement>(null);

  useLive(() => {
    const sim = session.shown();
    const pose = core.pumpPose(def, sim);
    const rise = pose.plungerTravel * 1000;
    lift(refs.plunger.current, rise);
    lift(refs.cup.current, pose.cupTravel * 1000);
    lift(refs.valve.current, pose.valveLift * 1000);
    refs.spring.current?.setAttribute('d', coilPath(mm, rise));
    line.spring.current?.setAttribute('d', valveCoilPath(mm, pose.valveLift * 1000));
    const room = mm('deliveryValve', 'from') - mm('plunger', 'to') - rise;
    refs.chamber.current?.setAttribute('height', Math.max(0.2, room).toFixed(2));
    refs.chamber.current?.setAttribute('fill', fuelFill(sim.pump.pressure));
    line.fuel.current?.setAttribute('fill', fuelFill(sim.line.pressure));
    const [inChamber, inLine] = airShares(def, sim);
    showBubbles(chamberAir.current, inChamber);
    showBubbles(line.air.current, inLine);
    // a thicker shim pack carries the pump away from the cam
    const away = (sim.assembly.shimThickness - def.pump.nominalShim) * 1000;
    const turned = (pose.camAngle * 180) / Math.PI;
    const axis = (away - camAxis(def, mm)).toFixed(2);
    cam.current?.setAttribute('transform', `translate(0 ${axis}) rotate(${turned.toFixed(1)})`);
    if (travel.current !== null) travel.current.textContent = figure(rise, 2);
  });
  const view = has.engine ? ON_ENGINE : LOOSE;

  return (
    <figure className="drawing">
      <div className="section">
        <svg viewBox={view} role="img" aria-label="Section through the pump">
          <Patterns />
          <FixedParts mm={mm} bore={(def.pump.plungerDiameter * 1000) / 2} has={has} />
          <References mm={mm} has={has} rides="nothing" />
        </svg>
        <svg viewBox={view} aria-hidden="true" className="moving">
          {has.engine ? <Cam def={def} mm={mm} group={cam} /> : null}
          {has.holder && has.valve ? <LineParts mm={mm} refs={line} /> : null}
          <MovingParts mm={mm} bore={(def.pump.plungerDiameter * 1000) / 2} has={has} refs={refs} />
          {has.plunger && has.valve ? <Bubbles group={chamberAir} at={CHAMBER_AIR} radius={0.75} /> : null}
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
        <div className="insets">
          <ControlInset />
          <NozzleInset />
          <EngineInset />
        </div>
        <ol className="drawing-list">
          {itemsOf(mm, has).map(({ number, name, isThere }) =>
            isThere ? (
              <li key={name} data-number={number}>
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

/** What of the pump is in place. */
export interface PartsFitted {
  plunger: boolean;
  cup: boolean;
  retainer: boolean;
  returnSpring: boolean;
  valve: boolean;
  holder: boolean;
  /** The pump stands on the engine, over its cam. */
  engine: boolean;
}

/** What of the pump is in place now; renders again when that changes. */
export function usePartsFitted(): PartsFitted {
  const fitted = useFact(({ assembly }) =>
    Object.entries(assembly.parts)
      .filter(([, where]) => where === 'fitted')
      .map(([part]) => part)
      .join(' '),
  ).split(' ');
  const engine = useFact(({ pump }) => pump.rest === null);
  return {
    engine,
    plunger: fitted.includes('plunger'),
    cup: fitted.includes('cup'),
    retainer: fitted.includes('retainer'),
    returnSpring: fitted.includes('returnSpring'),
    valve: fitted.includes('valve'),
    holder: fitted.includes('holder'),
  };
}
