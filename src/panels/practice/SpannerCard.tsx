import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react';
import type { Piece, SpannerUse } from '../../jobs/practice/piece.ts';
import { inNewton, inNewtonMetre } from '../format.ts';
import { SpannerPanel } from './SpannerPanel.tsx';
import { MOST_PULL, type SpannerHand, useSpanner } from './useSpanner.ts';
import './spanner.css';

type FeelOf = NonNullable<Piece['feel']>;

/** Drag along the picture that means all that an arm has, CSS pixels. */
const FULL_DRAG_PX = 280;
/** Angle at which the spanner begins, degrees from straight up, clockwise. */
const BEGIN = -75;
/** Marks round the nut, degrees. */
const TICKS = Array.from({ length: 24 }, (_, mark) => 15 * mark);
/** Torque from which the parts touch, N.m. */
const TOUCHES = 0.4;

/** The nut, the spanner on it, and what the hand feels of it, as far as the step shows that. */
export function SpannerCard({ use, name, feelOf }: { use: SpannerUse; name: string; feelOf: FeelOf }) {
  const [backup, setBackup] = useState(false);
  const hand = useSpanner(feelOf, use, backup);
  return (
    <article className="spanner-card">
      <SpannerSurface use={use} name={name} hand={hand} />
      <SpannerPanel hand={hand} needsBackup={use.needsBackup} backup={backup} onBackup={setBackup} />
    </article>
  );
}

/** The picture, to be dragged or worked with Space. */
function SpannerSurface({ use, name, hand }: { use: SpannerUse; name: string; hand: SpannerHand }) {
  const drag = useRef<{ id: number; x: number; y: number } | null>(null);
  const end = (event: PointerEvent) => {
    if (drag.current?.id !== event.pointerId) return;
    drag.current = null;
    hand.letGo();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if ((event.key !== ' ' && event.key !== 'ArrowDown') || event.ctrlKey || event.altKey) return;
    event.preventDefault();
    if (!event.repeat) hand.press('firm');
  };
  return (
    <section
      className="spanner-surface"
      aria-label={`${name}: keep Space down to pull, let it go to stop`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: Space pulls only while this has the focus
      tabIndex={0}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => {
        if (event.key === ' ' || event.key === 'ArrowDown') hand.letGo();
      }}
      onBlur={hand.letGo}
      onPointerDown={(event) => {
        if (event.button !== 0 || drag.current !== null) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        drag.current = { id: event.pointerId, x: event.clientX, y: event.clientY };
        hand.pullTo(0);
      }}
      onPointerMove={(event) => {
        const own = drag.current;
        if (own === null || own.id !== event.pointerId) return;
        const way = Math.hypot(event.clientX - own.x, event.clientY - own.y);
        hand.pullTo((way / FULL_DRAG_PX) * MOST_PULL);
      }}
      onPointerUp={end}
      onPointerCancel={end}
      onLostPointerCapture={end}
    >
      <SpannerPicture use={use} name={name} hand={hand} />
      <p className="spanner-feel" aria-live="off">
        <Shown use={use} hand={hand} />
      </p>
    </section>
  );
}

/** What a step lets the learner know while pulling. */
function Shown({ use, hand }: { use: SpannerUse; hand: SpannerHand }) {
  const { feel, force } = hand;
  const touch = feel.torque > TOUCHES ? 'It has touched.' : 'It runs freely.';
  if (use.shows === 'torque')
    return (
      <>
        <span className="figures">{inNewtonMetre(feel.torque)}</span> on the gauge. {touch}
      </>
    );
  if (use.shows === 'force')
    return (
      <>
        Your pull: <span className="figures">{inNewton(force)}</span>. {touch}
      </>
    );
  return <>{touch}</>;
}

/** Seen along the nut's axis; the hand's pull is drawn as the bend of the spanner. */
function SpannerPicture({ use, name, hand }: { use: SpannerUse; name: string; hand: SpannerHand }) {
  const angle = BEGIN + (hand.feel.turn * 180) / Math.PI;
  const length = 60 + use.length * 460;
  const showsPull = use.shows !== 'turn';
  const bend = showsPull ? 16 * (hand.force / MOST_PULL) : 0;
  const tip = -length;
  return (
    <svg
      viewBox="-200 -200 400 330"
      role="img"
      aria-label={`${name}, seen along its axis, with the spanner on it`}
    >
      <circle className="spanner-seat" r="62" />
      <path className="spanner-way" d="M-61 -61A86 86 0 0 1 61 -61M61 -61L56 -77M61 -61L45 -64" />
      {TICKS.map((at) => (
        <path key={at} className="spanner-tick" d="M0 -66V-72" transform={`rotate(${at})`} />
      ))}
      <g transform={`rotate(${angle.toFixed(1)})`}>
        <path
          className="spanner-shaft"
          d={`M-9 -20Q${(-7 + bend * 0.2).toFixed(1)} ${(tip / 2).toFixed(1)} ${(-11 - bend).toFixed(1)} ${tip.toFixed(1)}L${(11 - bend).toFixed(1)} ${tip.toFixed(1)}Q${(9 + bend * 0.2).toFixed(1)} ${(tip / 2).toFixed(1)} 9 -20Z`}
        />
        <circle className="spanner-head" r="40" />
        <path className="spanner-nut" d="M0 -28L24 -14V14L0 28L-24 14V-14Z" />
        <path className="spanner-mark" d="M0 -26V-8" />
        <circle className="spanner-bolt" r="12" />
        <g
          className="spanner-grip"
          data-pulls={hand.isPulling}
          transform={`translate(${(-bend).toFixed(1)} ${(tip + 18).toFixed(1)})`}
        >
          <path className="spanner-hand" d="M-20 -14Q-24 0 -20 14L16 18Q24 10 22 0Q24 -10 16 -18Z" />
          <path className="spanner-finger" d="M-18 -5H6M-19 4H5" />
        </g>
      </g>
      {use.shows === 'pull' || use.shows === 'force' ? (
        <g transform="translate(-150 108)">
          <path className="spanner-scale" d="M0 0H300V12H0Z" />
          <path className="spanner-pull" d={`M0 0H${((300 * hand.force) / MOST_PULL).toFixed(1)}V12H0Z`} />
          <text y="-4">what an arm can pull</text>
        </g>
      ) : null}
    </svg>
  );
}
