import { useEffect, useId, useMemo, useState } from 'react';
import type { Answer, Judgement } from '../../jobs/practice/piece.ts';
import { figure } from '../format.ts';
import { GaugePlot, place, polyline } from '../gauge/GaugePlot.tsx';
import { HoldWays } from '../gauge/HoldWays.tsx';
import { createSteadyHand } from '../gauge/steadyHand.ts';
import { frameFor } from '../gauge/traces.ts';
import { type Trace, useTrace } from '../gauge/useTrace.ts';
import { useJob } from '../useJob.ts';

/** The pump in the hand: buttons to work it, what the hand felt, what it is said to be, and what came of it. */
export function HandPanel(props: {
  name: string;
  isShown: boolean;
  hasGauge: boolean;
  answers: readonly Answer[];
  judgement: Judgement | null;
  onSay: (answer: string) => void;
}) {
  const { name, isShown, hasGauge, answers, judgement, onSay } = props;
  const { session } = useJob();
  const trace = useTrace();
  const hand = useMemo(() => createSteadyHand(session, 'letsGo'), [session]);
  useEffect(() => hand.stop, [hand]);
  return (
    <section className="in-hand" aria-label={`${name}, in the hand`} hidden={!isShown}>
      <h2>{name}</h2>
      <HoldWays hand={hand} />
      <p className="hold-help">
        Keep one down; lifting lets go. Or drag the pump itself, or use the arrow keys.
      </p>
      {hasGauge ? <Feel trace={trace} /> : <p className="gauge-away">The gauge is put away.</p>}
      {judgement === null ? (
        <Say name={name} answers={answers} onSay={onSay} />
      ) : (
        <Verdict judgement={judgement} />
      )}
    </section>
  );
}

/** Force against travel of the last hold, kept until the next. */
function Feel({ trace }: { trace: Trace }) {
  const { session } = useJob();
  const { points, refs } = trace;
  const frame = frameFor('plunger', session.definition, points);
  useEffect(() => {
    const last = points.at(-1);
    if (last === undefined) return;
    refs.trace.current?.setAttribute('points', polyline(frame, points));
    const most = points.reduce(
      (best, point) => (Math.abs(point[1]) > Math.abs(best[1]) ? point : best),
      last,
    );
    const [x, y] = place(frame, most);
    refs.dot.current?.setAttribute('cx', x.toFixed(1));
    refs.dot.current?.setAttribute('cy', y.toFixed(1));
  });
  const most = points.reduce((best, [, force]) => (Math.abs(force) > Math.abs(best) ? force : best), 0);
  return (
    <div className="feel-plot">
      <GaugePlot frame={frame} traceRef={refs.trace} dotRef={refs.dot} />
      <p className="feel-figures">
        {points.length > 0 ? 'Most ' : 'Force '}
        <span ref={refs.force} className="figures">
          {figure(most, 0)}
        </span>{' '}
        N at{' '}
        <span ref={refs.travel} className="figures">
          {figure((points.at(-1)?.[0] ?? session.sim().pump.travel * 1000) || 0, 2)}
        </span>{' '}
        mm
      </p>
    </div>
  );
}

function Say({
  name,
  answers,
  onSay,
}: {
  name: string;
  answers: readonly Answer[];
  onSay: (answer: string) => void;
}) {
  const [chosen, setChosen] = useState<string | null>(null);
  const id = useId();
  const isOffered = answers.some((answer) => answer.id === chosen);
  return (
    <form
      className="say"
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen !== null && isOffered) onSay(chosen);
      }}
    >
      <fieldset>
        <legend>What is {name.toLowerCase().replace(/(\w)$/, (letter) => letter.toUpperCase())} like?</legend>
        {answers.map((answer) => (
          <label key={answer.id}>
            <input
              type="radio"
              name={id}
              value={answer.id}
              checked={chosen === answer.id}
              onChange={() => setChosen(answer.id)}
            />
            {answer.words}
          </label>
        ))}
      </fieldset>
      <button type="submit" className="button strong" aria-disabled={!isOffered}>
        Say so
      </button>
    </form>
  );
}

function Verdict({ judgement }: { judgement: Judgement }) {
  return (
    <div className="verdict" role="status" data-right={judgement.right}>
      {judgement.says.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
