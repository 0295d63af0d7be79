import { lazy, Suspense, useEffect } from 'react';
import type { Session } from '../session/session.ts';
import { FaultBoundary } from './FaultBoundary.tsx';

/** Fetches the 3D bench, so that it is there when it is asked for. */
export const loadBench = () => import('../bench/Bench.tsx');

const Bench = lazy(async () => ({ default: (await loadBench()).Bench }));

/** The 3D bench, loaded by itself: the job can be begun from the panels before it is there. */
export function BenchPlace(props: { session: Session; onUp: () => void; onFault: () => void }) {
  const { session, onUp, onFault } = props;
  return (
    <FaultBoundary fallback={null} onFault={onFault}>
      <Suspense
        fallback={<p className="bench-coming">The bench is being set up. The list below works already.</p>}
      >
        <Bench session={session} />
        <Up onUp={onUp} />
      </Suspense>
    </FaultBoundary>
  );
}

/** Tells once that what stands beside it is on the page. */
function Up({ onUp }: { onUp: () => void }) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: told once, however often the parent renders
  useEffect(() => onUp(), []);
  return null;
}
