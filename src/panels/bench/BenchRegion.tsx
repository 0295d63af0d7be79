import type { ReactNode } from 'react';
import { PumpDrawing } from '../drawing/PumpDrawing.tsx';
import { useFact, useJob } from '../useJob.ts';
import { ApartSlider, BenchTools } from './BenchTools.tsx';
import { PartStrip } from './PartStrip.tsx';
import { useBenchKeys } from './useBenchKeys.ts';
import './bench.css';

/** The bench: the picture, what it shows in words, the section drawing on demand, and the caution of the moment. */
export function BenchRegion({
  picture,
  heard,
  drawing,
  onDrawing,
  onLeave,
  isSlow,
  onSlow,
}: {
  picture: ReactNode;
  /** What sounds, in words. */
  heard?: ReactNode;
  drawing: 'off' | 'beside' | 'alone';
  onDrawing: () => void;
  onLeave: () => void;
  isSlow: boolean;
  onSlow: (() => void) | null;
}) {
  const { session } = useJob();
  const keys = useBenchKeys(session, onLeave);
  return (
    <div className="bench" data-drawing={drawing}>
      <section
        className="bench-focus"
        aria-label="Bench"
        aria-describedby="bench-words"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: single keys are allowed only while this region has the focus
        tabIndex={0}
        {...keys}
      >
        {drawing === 'alone' ? null : picture}
        <p id="bench-words" className="unseen">
          <BenchWords /> Single keys work here; Escape goes to the list of acts.
        </p>
      </section>
      {drawing === 'off' ? null : (
        <div className="bench-drawing">
          <PumpDrawing />
        </div>
      )}
      <BenchTools
        hasPicture={drawing !== 'alone'}
        hasDrawing={drawing === 'beside'}
        onDrawing={onDrawing}
        isSlow={isSlow}
        onSlow={onSlow}
      />
      {drawing === 'alone' ? null : <ApartSlider />}
      {drawing === 'alone' ? <div className="foot-words">{heard}</div> : <PartStrip heard={heard} />}
    </div>
  );
}

/** The picture in words, for whoever does not see it. */
function BenchWords() {
  const loose = useFact(({ pump }) => pump.rest !== null);
  const running = useFact(({ engine }) => engine.running);
  const off = useFact(
    ({ assembly }) => Object.values(assembly.parts).filter((where) => where !== 'fitted').length,
  );
  return (
    <>
      The set on its bench, engine {running ? 'running' : 'standing'}, the pump{' '}
      {loose ? 'off the engine' : 'on the engine'}, {off} parts off.
    </>
  );
}
