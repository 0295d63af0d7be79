import { lazy, Suspense, useEffect } from 'react';
import { disclaimer } from '../jobs/cautions.ts';
import { FirstPage } from '../panels/first/FirstPage.tsx';
import { BegunHere } from './BegunHere.tsx';
import { FaultBoundary } from './FaultBoundary.tsx';
import { jobFiles, offers } from './offers.ts';
import { jobHash, routeOf, useHash } from './useRoute.ts';

const loadJobPlace = () => import('./JobPlace.tsx');
const BookPlace = lazy(async () => ({ default: (await import('./BookPlace.tsx')).BookPlace }));
const PracticePlace = lazy(async () => ({
  default: (await import('./PracticePlace.tsx')).PracticePlace,
}));
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

  if (route.at === 'book') {
    return (
      <FaultBoundary fallback={<Sorry what="The book" />}>
        <Suspense fallback={<p className="opening">Opening the book.</p>}>
          <BookPlace />
        </Suspense>
      </FaultBoundary>
    );
  }
  if (route.at === 'practice') {
    return (
      <FaultBoundary key={hash} fallback={<Sorry what="The practice piece" />}>
        <Suspense fallback={<p className="opening">Laying the pumps out.</p>}>
          <PracticePlace key={hash} id={route.id} seed={route.seed} onLeave={leave} />
        </Suspense>
      </FaultBoundary>
    );
  }
  if (route.at === 'first' || file === undefined) {
    return (
      <FirstPage
        jobs={offers}
        disclaimer={disclaimer}
        begun={<BegunHere />}
        onStart={(id, mode) => {
          window.location.hash = jobHash(id, mode);
        }}
      />
    );
  }
  return (
    <FaultBoundary key={route.id + route.mode} fallback={<Sorry what="The job" />}>
      <Suspense fallback={<p className="opening">Laying the job out.</p>}>
        <JobPlace
          key={route.id + route.mode}
          file={file}
          mode={route.mode}
          begun={route.begun}
          onLeave={leave}
        />
      </Suspense>
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
