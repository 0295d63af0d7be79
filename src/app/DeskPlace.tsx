import { lazy, Suspense, useState } from 'react';
import setText from '../../models/bench-set/set.json?raw';
import { CheckPage } from '../desk/CheckPage.tsx';
import { DeskPage } from '../desk/DeskPage.tsx';
import { problemLine } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { scenarioFrom } from '../jobs/scenario.ts';
import { tableOf } from './evidenceThreads.ts';
import { jobFiles, offers, ownJob, ownJobs } from './offers.ts';
import { setHash } from './useRoute.ts';

const PreviewOf = lazy(async () => ({ default: (await import('./PreviewOf.tsx')).PreviewOf }));

/** The whole link of a packed work, wherever this page is served from. */
const addressOf = (packed: string): string => new URL(setHash(packed), window.location.href).href;

/** The instructor's desk; throws where the set's definition or a job of the program is wrong. */
export function DeskPlace({ part }: { part: 'set' | 'check' }) {
  const [{ def, jobs }] = useState(() => {
    const set = readSet(setText);
    if (!set.ok) throw new Error(set.problems.map(problemLine).join('\n'));
    const ready = jobFiles.map((file) => {
      const scenario = scenarioFrom(file);
      if (!scenario.ok) throw new Error(scenario.problems.map(problemLine).join('\n'));
      return { scenario: scenario.value, pile: offers.find(({ id }) => id === file.id)?.pile ?? '' };
    });
    return { def: set.value, jobs: ready };
  });
  if (part === 'check') return <CheckPage def={def} own={ownJobs} />;
  return (
    <DeskPage
      def={def}
      jobs={jobs}
      own={ownJob}
      tableOf={tableOf}
      addressOf={addressOf}
      preview={(work, onBack) => (
        <Suspense fallback={<p className="opening">Having it worked.</p>}>
          <PreviewOf def={def} work={work} onLeave={onBack} />
        </Suspense>
      )}
    />
  );
}
