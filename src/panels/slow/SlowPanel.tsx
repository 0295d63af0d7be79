import { useCallback, useEffect, useId, useLayoutEffect, useMemo, useRef } from 'react';
import type { StrokeSample } from '../../sim/set/slowStroke.ts';
import type { Core } from '../core.ts';
import { inTurnsAMinute } from '../format.ts';
import { useIsNarrow } from '../useIsNarrow.ts';
import { useFact, useJob, useView } from '../useJob.ts';
import { CrankDial } from './CrankDial.tsx';
import { drawMoment, StrokePlots } from './StrokePlots.tsx';
import { StrokeTable } from './StrokeTable.tsx';
import { axesOf, type Span } from './strips.ts';
import { usePlay } from './usePlay.ts';
import { deliveryOf, type Looked, useSlow } from './useSlow.ts';
import { camWords, crankWords, markIds, markNames, momentWords } from './words.ts';
import './slow.css';

const PACE = 0.2;
/** From one strip of the plots to the next, in a drawing 400 wide. */
const PITCH = 80;
const NARROW_PITCH = 60;
const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** One injection on a copy of the set as it stands, led through by turning the crank by hand. */
export function SlowPanel({ onClose }: { onClose: () => void }) {
  const { session } = useJob();
  useSectionView();
  useEffect(() => () => session.look({ pace: 1 }), [session]);
  return (
    <section className="slow" aria-labelledby="slow-title">
      <header className="slow-head">
        <h2 id="slow-title">One injection, slowly</h2>
        <button type="button" className="button quiet" onClick={onClose}>
          Close
        </button>
      </header>
      <SlowBody />
      <PaceBox />
    </section>
  );
}

/** Looks at the pump in section while the panel is open, and gives the former view back. */
function useSectionView(): void {
  const { session } = useJob();
  useEffect(() => {
    if (session.sim().pump.rest !== null) return;
    const { view, section, apart } = session.store.getState();
    session.look({ view: 'section', section: true, apart: 0 });
    return () => {
      if (session.store.getState().view === 'section') session.look({ view, section, apart });
    };
  }, [session]);
}

function SlowBody() {
  const { core } = useJob();
  const svg = useRef<SVGSVGElement>(null);
  const arm = useRef<SVGGElement>(null);
  const slider = useRef<HTMLInputElement>(null);
  const told = useRef<HTMLParagraphElement>(null);
  const axes = useRef<ReturnType<typeof axesOf>>([]);

  const onMoment = useCallback((sample: StrokeSample, span: Span) => {
    if (svg.current !== null) drawMoment(svg.current, axes.current, sample, span);
    arm.current?.setAttribute('transform', `rotate(${degrees(sample.theta).toFixed(1)})`);
    if (slider.current !== null) {
      slider.current.value = degrees(sample.cam).toFixed(2);
      slider.current.setAttribute('aria-valuetext', momentWords(sample));
    }
    if (told.current !== null)
      told.current.textContent = `Cam ${camWords(sample.cam)}, ${crankWords(sample.theta)}`;
  }, []);
  const slow = useSlow(onMoment);
  const { looked, span, cam, scrub } = slow;
  const isNarrow = useIsNarrow();
  const pitch = isNarrow ? NARROW_PITCH : PITCH;
  const drawn = useMemo(
    () => (looked === null ? [] : axesOf(looked.stroke, span, pitch)),
    [looked, span, pitch],
  );
  // set before the first moment is drawn on them
  useLayoutEffect(() => {
    axes.current = drawn;
  }, [drawn]);
  const named = useMemo(() => (looked === null ? null : namedAt(core, looked, span)), [core, looked, span]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn again when the plots are laid out anew
  useEffect(() => scrub(cam.current), [pitch]);
  const play = usePlay(cam, span, scrub);
  const { stop } = play;
  const lead = useCallback(
    (to: number) => {
      stop();
      scrub(to);
    },
    [stop, scrub],
  );

  if (looked === null || named === null) {
    return (
      <p className="slow-none">
        The pump is off the engine or has no plunger in it: no cam works it. On the engine, its next stroke
        can be led through here.
      </p>
    );
  }
  const fine = (span.to - span.from) / 400;
  return (
    <>
      <StrokeWords looked={looked} onNext={slow.goOn} onAgain={slow.startAgain} />
      <div className="slow-lead">
        <CrankDial arm={arm} onTurn={(by) => lead(cam.current + by / 2)} />
        <div className="slow-turn">
          <p ref={told} className="slow-here" />
          <input
            ref={slider}
            type="range"
            aria-label="Turn the crank: cam angle from its nose"
            min={degrees(span.from).toFixed(2)}
            max={degrees(span.to).toFixed(2)}
            step={degrees(fine).toFixed(2)}
            defaultValue={degrees(cam.current)}
            onChange={(event) => lead((Number(event.target.value) * Math.PI) / 180)}
          />
          <div className="slow-buttons">
            <button type="button" className="button" aria-pressed={play.isPlaying} onClick={play.press}>
              {play.isStill ? 'A step on' : play.isPlaying ? 'Stop here' : 'Turn slowly'}
            </button>
            <button
              type="button"
              className="button"
              aria-pressed={slow.isClose}
              aria-disabled={deliveryOf(looked) === null}
              onClick={() => slow.setClose(!slow.isClose && deliveryOf(looked) !== null)}
            >
              Delivery only
            </button>
          </div>
        </div>
      </div>
      <Stops looked={looked} onGo={lead} />
      <StrokePlots
        svg={svg}
        stroke={looked.stroke}
        marks={looked.marks}
        span={span}
        axes={drawn}
        pitch={pitch}
        named={named}
        onScrub={lead}
      />
      <StrokeTable stroke={looked.stroke} span={span} />
    </>
  );
}

/** Where the names of the curves stand: on the way down for the lift, past the middle for the rest. */
function namedAt(core: Core, { stroke }: Looked, { from, to }: Span): readonly [StrokeSample, StrokeSample] {
  const at = (share: number) => core.strokes.at(stroke, from + share * (to - from));
  return to > 0.5 ? [at(0.78), at(0.72)] : [at(0.5), at(0.88)];
}

/** Which stroke this is and how it is turned. */
function StrokeWords({
  looked,
  onNext,
  onAgain,
}: {
  looked: Looked;
  onNext: () => void;
  onAgain: () => void;
}) {
  const throttle = useFact(({ control }) => Math.round(control.throttle * 100));
  const isStopped = useFact(({ control }) => control.stopLever === 'stop');
  return (
    <div className="slow-which">
      <p>
        {looked.count === 1 ? 'The next stroke' : `Stroke ${looked.count} from now`},{' '}
        <span className="figures">{inTurnsAMinute(looked.stroke.speed)}</span>,{' '}
        {isStopped ? 'lever at stop' : `throttle ${throttle}\u202f%`}
      </p>
      <button type="button" className="button quiet" onClick={onNext}>
        One on
      </button>
      {looked.count > 1 ? (
        <button type="button" className="button quiet" onClick={onAgain}>
          First
        </button>
      ) : null}
    </div>
  );
}

/** What happens in the stroke, each to be jumped to. */
function Stops({ looked, onGo }: { looked: Looked; onGo: (cam: number) => void }) {
  return (
    <ol className="slow-stops" aria-label="Moments of the stroke">
      {markIds.map((id) => {
        const cam = looked.marks[id];
        return (
          <li key={id}>
            <button
              type="button"
              className="button"
              aria-disabled={cam === null}
              onClick={() => (cam === null ? undefined : onGo(cam))}
            >
              {markNames[id]}
              <span className="figures">{cam === null ? 'does not' : camWords(cam)}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

/** The set itself, slowed. */
function PaceBox() {
  const { session } = useJob();
  const pace = useView((view) => view.pace);
  const id = useId();
  return (
    <p className="slow-pace">
      <input
        id={id}
        type="checkbox"
        checked={pace < 1}
        onChange={(event) => session.look({ pace: event.target.checked ? PACE : 1 })}
      />
      <label htmlFor={id}>While this is open, let the set itself move at a fifth of its speed</label>
    </p>
  );
}
