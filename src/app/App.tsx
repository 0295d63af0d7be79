import { lazy, type ReactNode, Suspense, useEffect, useState } from 'react';
import { FaultBoundary } from './FaultBoundary.tsx';
import { FirstPlace } from './FirstPlace.tsx';
import { jobFiles } from './offers.ts';
import { packedHere } from './packedHere.ts';
import { routeOf, useHash } from './useRoute.ts';

const loadJobPlace = () => import('./JobPlace.tsx');
const BookPlace = lazy(async () => ({ default: (await import('./BookPlace.tsx')).BookPlace }));
const PracticePlace = lazy(async () => ({
  default: (await import('./PracticePlace.tsx')).PracticePlace,
}));
const DeskPlace = lazy(async () => ({ default: (await import('./DeskPlace.tsx')).DeskPlace }));
const PackagedPlace = lazy(async () => ({
  default: (await import('./PackagedPlace.tsx')).PackagedPlace,
}));
const SetPlace = lazy(async () => ({ default: (await import('./SetPlace.tsx')).SetPlace }));
const DebriefPlace = lazy(async () => ({ default: (await import('./DebriefPlace.tsx')).DebriefPlace }));
const JobPlace = lazy(async () => ({ default: (await loadJobPlace()).JobPlace }));

/** The page: the first screen, or the job that its address names. */
export function App() {
  const hash = useHash();
  const route = routeOf(hash);
  const file = route.at === 'job' ? jobFiles.find(({ id }) => id === route.id) : undefined;
  useEffect(() => {
    // The first screen is there at once; what the job needs comes in while it is being read.
    const timer = setTimeout(async () => (await loadJobPlace()).prepare(), 300);
    return () => clearTimeout(timer);
  }, []);

  const [packed] = useState(packedHere);
  if (packed !== null)
    return (
      <Place what="The work" waiting="Laying the job out.">
        <PackagedPlace packed={packed} />
      </Place>
    );
  switch (route.at) {
    case 'book':
      return (
        <Place what="The book" waiting="Opening the book.">
          <BookPlace />
        </Place>
      );
    case 'desk':
      return (
        <Place what="The desk" waiting="Clearing the desk.">
          <DeskPlace part={route.part} />
        </Place>
      );
    case 'practice':
      return (
        <Place key={hash} what="The practice piece" waiting="Laying the pumps out.">
          <PracticePlace id={route.id} seed={route.seed} onLeave={leave} />
        </Place>
      );
    case 'debrief':
      return (
        <Place key={hash} what="The debrief" waiting="Fetching the work.">
          <DebriefPlace id={route.id} onLeave={leave} />
        </Place>
      );
    case 'set':
      return (
        <Place key={route.packed} what="The work" waiting="Laying the job out.">
          <SetPlace packed={route.packed} begun={route.begun} onLeave={leave} />
        </Place>
      );
    case 'job':
      if (file !== undefined)
        return (
          <Place key={route.id + route.mode} what="The job" waiting="Laying the job out.">
            <JobPlace file={file} mode={route.mode} begun={route.begun} onLeave={leave} />
          </Place>
        );
  }
  return <FirstPlace />;
}

/** A part of the page that is loaded by itself, and whose failure leaves the rest standing. */
function Place({ what, waiting, children }: { what: string; waiting: string; children: ReactNode }) {
  return (
    <FaultBoundary fallback={<Sorry what={what} />}>
      <Suspense fallback={<p className="opening">{waiting}</p>}>{children}</Suspense>
    </FaultBoundary>
  );
}

function leave(): void {
  window.location.hash = '';
}

function Sorry({ what }: { what: string }) {
  return (
    <main className="opening">
      <p>{what} could not be opened. Nothing was lost that had been kept.</p>
      <p>
        <a href="#/">Back to the first screen</a>
      </p>
    </main>
  );
}
