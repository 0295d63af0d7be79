import { useId } from 'react';
import { useJob, useView } from '../useJob.ts';
import { viewNames } from './views.ts';

/** How the picture is looked at; none of it touches the set. */
export function BenchTools({
  hasPicture,
  hasDrawing,
  onDrawing,
  isSlow,
  onSlow,
}: {
  hasPicture: boolean;
  hasDrawing: boolean;
  onDrawing: () => void;
  isSlow: boolean;
  /** Null where the work is assessed: a stroke looked at from inside is help. */
  onSlow: (() => void) | null;
}) {
  return (
    <fieldset className="bench-tools" data-over-picture="true" aria-label="Ways to look">
      {hasPicture ? <PictureTools /> : null}
      {onSlow === null ? null : (
        <button
          type="button"
          className="button"
          aria-pressed={isSlow}
          aria-label="One injection, slowly"
          onClick={onSlow}
        >
          Slow
        </button>
      )}
      {hasPicture ? (
        <button type="button" className="button" aria-pressed={hasDrawing} onClick={onDrawing}>
          Drawing
        </button>
      ) : null}
    </fieldset>
  );
}

/** A viewpoint, with the cut or the pulled-apart parts that it is there to show; others show the pump whole. */
function lookFrom(view: string, isLoose: boolean) {
  // On the engine the cam's end of the pump is seen in section or not at all.
  const section = view === 'section' || (view === 'camEnd' && !isLoose);
  return { view, section, apart: view === 'apart' ? 1 : 0 };
}

function PictureTools() {
  const { session } = useJob();
  const view = useView((state) => state.view);
  const section = useView((state) => state.section);
  const names = useView((state) => state.names);
  const id = useId();
  return (
    <>
      <label htmlFor={id} className="unseen">
        View
      </label>
      <select
        id={id}
        value={view}
        onChange={(event) => session.look(lookFrom(event.target.value, session.sim().pump.rest !== null))}
      >
        {Object.entries(viewNames).map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </select>
      <button
        type="button"
        className="button"
        aria-pressed={section}
        aria-label="Cut away"
        onClick={() => session.look({ section: !section })}
      >
        Cut
      </button>
      <button
        type="button"
        className="button"
        aria-pressed={names}
        aria-label="Names of the parts"
        onClick={() => session.look({ names: !names })}
      >
        Names
      </button>
    </>
  );
}

/** How far the pump is drawn apart along its axis: up is out, as in the picture. */
export function ApartSlider() {
  const { session } = useJob();
  const apart = useView((state) => state.apart);
  const id = useId();
  const percent = Math.round(apart * 100);
  const isWanted = useView(({ view }) => view === 'apart' || view === 'section') || apart > 0;
  return (
    <div className="apart" data-wanted={isWanted} data-over-picture="true">
      <label htmlFor={id}>Apart</label>
      <input
        id={id}
        type="range"
        min={0}
        max={100}
        step={5}
        value={percent}
        aria-orientation="vertical"
        aria-valuetext={percent === 0 ? 'together' : `${percent} % apart`}
        onChange={(event) => session.look({ apart: Number(event.target.value) / 100 })}
      />
    </div>
  );
}
