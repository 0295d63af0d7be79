import { type RefObject, useRef } from 'react';
import { FixedParts } from '../drawing/FixedParts.tsx';
import { bar, coilPath, type Ruler, rulerOf } from '../drawing/layout.ts';
import { MovingParts, type MovingRefs } from '../drawing/MovingParts.tsx';
import { Patterns } from '../drawing/Patterns.tsx';
import { usePartsFitted } from '../drawing/PumpDrawing.tsx';
import { useLive } from '../drawing/useLive.ts';
import { useJob } from '../useJob.ts';
import { PICTURE_MM } from './useDragHand.ts';
import '../drawing/drawing.css';

const LABELS = {
  section: 'The pump in section, cam end down',
  outside: 'The pump from outside, cam end down',
} as const;
const VIEW = `-44 -116 88 ${PICTURE_MM}`;
/** Length of a fingertip as drawn, mm, and how much of the hand's lead it gives. */
const TIP = 17;
const GIVE = 0.62;

interface HandRefs {
  below: RefObject<SVGGElement | null>;
  above: RefObject<SVGGElement | null>;
  rod: RefObject<SVGPathElement | null>;
  pin: RefObject<SVGGElement | null>;
}

/** The pump in the hand as the model has it, in section or from outside, with the fingertip that presses it. */
export function PumpPicture({ isOutside }: { isOutside: boolean }) {
  const { session, core } = useJob();
  const def = session.definition;
  const mm = rulerOf(def);
  const bore = (def.pump.plungerDiameter * 1000) / 2;
  // its valve is too small a thing to be followed in the hand
  const has = { ...usePartsFitted(), engine: false, valve: false };
  const refs: MovingRefs = {
    plunger: useRef<SVGGElement>(null),
    cup: useRef<SVGGElement>(null),
    spring: useRef<SVGPathElement>(null),
    valve: useRef<SVGPathElement>(null),
    chamber: useRef<SVGRectElement>(null),
  };
  const hand: HandRefs = {
    below: useRef<SVGGElement>(null),
    above: useRef<SVGGElement>(null),
    rod: useRef<SVGPathElement>(null),
    pin: useRef<SVGGElement>(null),
  };
  useLive(() => {
    const sim = session.sim();
    const pose = core.pumpPose(def, sim);
    const rise = pose.plungerTravel * 1000;
    lift(refs.plunger.current, rise);
    lift(refs.cup.current, rise);
    refs.spring.current?.setAttribute('d', coilPath(mm, rise));
    refs.chamber.current?.setAttribute('fill', 'none');
    hand.pin.current?.setAttribute('transform', `rotate(${((-pose.turn * 180) / Math.PI).toFixed(1)})`);
    // the spring between hand and part: what the hand leads by is drawn as the fingertip giving
    const lead = sim.hand.grasp === null ? null : (sim.hand.grasp.force / def.hand.coupling) * 1000;
    drawHand(hand, mm, rise, lead);
  }, 0);
  return (
    <div className="pump-picture section">
      <svg viewBox={VIEW} role="img" aria-label={LABELS[isOutside ? 'outside' : 'section']}>
        <Patterns />
        {isOutside ? null : <FixedParts mm={mm} bore={bore} has={has} />}
      </svg>
      <svg viewBox={VIEW} aria-hidden="true" className="moving">
        <MovingParts mm={mm} bore={bore} has={has} refs={refs} />
        <path ref={hand.rod} className="hand-rod" />
        <g ref={hand.below}>
          <Fingertip />
        </g>
        <g ref={hand.above}>
          <Fingertip />
        </g>
      </svg>
      {isOutside ? (
        <svg viewBox={VIEW} aria-hidden="true" className="outside">
          <Outside mm={mm} hasHolder={has.holder} />
        </svg>
      ) : null}
      <svg
        viewBox="-9 -13 32 26"
        className="pin-dial"
        role="img"
        aria-label="Control pin, seen along the axis"
      >
        <circle r="8" className="part" />
        <circle r="3.5" className="groove" />
        <g ref={hand.pin}>
          <path d="M3 -1.25H19V1.25H3Z" className="part pin" />
        </g>
      </svg>
    </div>
  );
}

/** The body from outside: it hides everything but what stands out of its cam end. */
function Outside({ mm, hasHolder }: { mm: Ruler; hasHolder: boolean }) {
  const flange = mm('body', 'flangeWidth') / 2;
  const from = mm('body', 'flangeFromCamEnd');
  const window = mm('body', 'windowFromCamEnd');
  return (
    <>
      <path className="part" d={bar(mm('body', 'pilotRadius'), 0, mm('body', 'bellTop'))} />
      <path className="part" d={bar(mm('body', 'bellRadius'), from, mm('body', 'bellTop'))} />
      <path
        className="part"
        d={bar(mm('body', 'upperRadius'), mm('body', 'bellTop'), mm('body', 'length'))}
      />
      <path className="part" d={bar(flange, from, from + mm('body', 'flangeThickness'))} />
      {hasHolder ? <HolderOutside mm={mm} /> : null}
      <path
        className="solid"
        d={bar(mm('body', 'windowWidth') / 2, window, window + mm('body', 'windowHeight'))}
      />
      <path
        className="part"
        d={bar(mm('inlet', 'radius'), mm('body', 'inletHeight') - 5, mm('body', 'inletHeight') + 5)}
      />
    </>
  );
}

/** The holder, screwed in at the outlet end: its hexagon and the thread that the pipe goes on. */
function HolderOutside({ mm }: { mm: Ruler }) {
  const top = mm('holder', 'from') + mm('holder', 'length');
  const hexagon = bar(mm('holder', 'hexAcross') / 2, mm('holder', 'hexFrom'), mm('holder', 'hexTo'));
  return (
    <>
      <path className="part" d={bar(mm('holder', 'unionRadius'), mm('body', 'length'), top)} />
      <path className="part" d={hexagon} />
    </>
  );
}

/** A fingertip pressing upwards, its tip at the origin. */
function Fingertip() {
  return (
    <>
      <path className="hand-tip" d={`M-7 ${TIP}V6Q-7 0 0 0Q7 0 7 6V${TIP}`} />
      <path className="hand-nail" d="M-3.6 8Q-3.6 3 0 3Q3.6 3 3.6 8Q0 9.5 -3.6 8Z" />
    </>
  );
}

function lift(element: SVGElement | null, rise: number): void {
  element?.setAttribute('transform', `translate(0 ${(-rise).toFixed(2)})`);
}

/** lead: how far the hand is ahead of the plunger, mm, towards the outlet positive; null with no hand on it. */
function drawHand(hand: HandRefs, mm: Ruler, rise: number, lead: number | null): void {
  const give = lead === null ? 0 : Math.min(0.6, (GIVE * Math.abs(lead)) / TIP);
  const shape = `scale(${(1 + 0.35 * give).toFixed(3)} ${(1 - give).toFixed(3)})`;
  const foot = mm('cup', 'proud') - rise;
  const crown = -mm('plunger', 'to') - rise;
  const pulls = lead !== null && lead < -0.02;
  show(hand.below.current, lead !== null && !pulls, `translate(0 ${foot.toFixed(2)}) ${shape}`);
  show(hand.above.current, pulls, `translate(0 ${(crown - 30).toFixed(2)}) rotate(180) ${shape}`);
  hand.rod.current?.setAttribute(
    'd',
    pulls ? `M-1.6 ${crown.toFixed(2)}V${(crown - 30).toFixed(2)}H1.6V${crown.toFixed(2)}Z` : '',
  );
}

function show(element: SVGGElement | null, isShown: boolean, transform: string): void {
  element?.setAttribute('visibility', isShown ? 'visible' : 'hidden');
  element?.setAttribute('transform', transform);
}
