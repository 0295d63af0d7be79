import { Suspense, use, useState } from 'react';
import type { Job } from '../jobs/job.ts';
import { problemLine } from '../jobs/problems.ts';
import type { Lms } from '../packages/lms.ts';
import { SetWorkCard } from '../panels/first/SetWorkCard.tsx';
import { type Assignment, unpackAssignment } from '../session/assignment.ts';
import { createSession } from '../session/session.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import { OpenedJob } from './JobPlace.tsx';
import { followIn, keptBy, systemHere } from './learningSystem.ts';
import { ownJob } from './offers.ts';
import { load, type Opened } from './openWork.ts';

/** What stands ready when the page opens: the work, the system that started it, and the job as it was left there. */
type Ready =
  | {
      readonly work: Assignment;
      readonly def: SetDefinition;
      readonly system: Lms | null;
      readonly left: Job | null;
      readonly why: string | null;
    }
  | { readonly title: string; readonly wrong: readonly string[] };

async function makeReady(packed: string): Promise<Ready> {
  const read = unpackAssignment(packed, ownJob);
  if (!read.ok) return { title: 'This package is not whole', wrong: read.problems.map(problemLine) };
  const work = read.value;
  const { def, scenario } = load(work.scenario);
  try {
    const system = await systemHere(window);
    const before = system === null ? { job: null } : keptBy(system, def, scenario);
    return 'why' in before
      ? { work, def, system, left: null, why: before.why }
      : { work, def, system, left: before.job, why: null };
  } catch (problem) {
    const why = problem instanceof Error ? problem.message : String(problem);
    const title = 'The learning system did not let the work be begun';
    return { title, wrong: [why, 'Close this page and start the work from the learning system once more.'] };
  }
}

/** The one work of a package, begun or gone on with in the learning system that started it. */
export function PackagedPlace({ packed }: { packed: string }) {
  const [coming] = useState(() => makeReady(packed));
  return (
    <Suspense fallback={<p className="opening">Asking the learning system.</p>}>
      <ReadyPlace packed={packed} coming={coming} />
    </Suspense>
  );
}

function ReadyPlace({ packed, coming }: { packed: string; coming: Promise<Ready> }) {
  const ready = use(coming);
  const [opened, setOpened] = useState<{ work: Promise<Opened>; end: () => Promise<void> } | null>(null);
  const [isOver, setOver] = useState(false);
  if ('wrong' in ready)
    return (
      <main className="opening">
        <h1>{ready.title}</h1>
        <ul>
          {ready.wrong.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </main>
    );
  if (isOver)
    return (
      <main className="opening">
        <h1>{ready.work.name}</h1>
        <p>You have left the work. This page can be closed.</p>
      </main>
    );
  const begin = () => {
    const { work, def, system, left } = ready;
    const { scenario, mode, hints } = work;
    const session = createSession({
      def,
      scenario,
      seed: scenario.seed,
      mode,
      hints,
      ...(left && { from: left }),
    });
    const { notKept, end } =
      system === null
        ? {
            notKept: Promise.resolve('this page was not started by a learning system'),
            end: async () => undefined,
          }
        : followIn(system, session);
    setOpened({ work: Promise.resolve({ session, notKept }), end });
  };
  if (opened === null)
    return (
      <SetWorkCard
        work={ready.work}
        isBegun={ready.left !== null}
        note={ready.why}
        isPackage
        onBegin={begin}
      />
    );
  const leave = async () => {
    await opened.end();
    const next = ready.system?.returnTo ?? null;
    if (next === null) setOver(true);
    else window.location.assign(next);
  };
  return <OpenedJob opened={opened.work} set={packed} onLeave={() => void leave()} />;
}
