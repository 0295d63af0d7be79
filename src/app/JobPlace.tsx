import { lazy, Suspense, use, useState } from 'react';
import { SoundControl, SoundOf } from '../bench/sound/SoundControl.tsx';
import type { Mode } from '../jobs/scenario.ts';
import { JobScreen } from '../panels/JobScreen.tsx';
import { useClock } from '../panels/useClock.ts';
import type { Session } from '../session/session.ts';
import { BenchPlace, loadBench } from './BenchPlace.tsx';
import { core } from './core.ts';
import { lastCode, saveReturned } from './handIn.ts';
import { hasWebgl } from './hasWebgl.ts';
import { type Finished, finishedHere } from './openDebrief.ts';
import { type Opened, openWork, type SetTerms } from './openWork.ts';
import { RefusedWork } from './RefusedWork.tsx';
import { soundDesk } from './soundDesk.ts';
import { begunIn } from './useRoute.ts';
import { saveSession } from './workFile.ts';

/** The debrief comes in when it is asked for. */
const DebriefOf = lazy(async () => ({ default: (await import('./DebriefPlace.tsx')).DebriefOf }));

/** Fetches the bench ahead of time where it can be shown. */
export function prepare(): void {
  if (hasWebgl()) void loadBench();
}

type Props = {
  readonly file: unknown;
  readonly mode: Mode;
  /** When the job was begun that is to be gone on with, ms since 1970; null opens it afresh. */
  readonly begun: number | null;
  /** The terms of an instructor who set it. */
  readonly set?: SetTerms;
  readonly onLeave: () => void;
};

/** A job with its bench, opened afresh or gone on with. */
export function JobPlace({ file, mode, begun, set, onLeave }: Props) {
  const [opened] = useState(() => openWork(file, mode, begun, set));
  return (
    <Suspense fallback={<p className="opening">Laying the job out.</p>}>
      <OpenedJob opened={opened} set={set?.packed} onLeave={onLeave} />
    </Suspense>
  );
}

/** A job once it is open, or why it cannot be. */
export function OpenedJob({
  opened,
  set,
  onLeave,
}: {
  opened: Promise<Opened>;
  set?: string | undefined;
  onLeave: () => void;
}) {
  const work = use(opened);
  return 'session' in work ? (
    <JobOnBench {...work} set={set} onLeave={onLeave} />
  ) : (
    <RefusedWork {...work} onLeave={onLeave} />
  );
}

/** The job: in 3D where the browser can, as a section drawing where it cannot. */
function JobOnBench({
  session,
  notKept,
  set,
  onLeave,
}: OpenJob & { set: string | undefined; onLeave: () => void }) {
  const [debrief, setDebrief] = useState<{ finished: Finished; at: number | null } | null>(null);
  const [picture, setPicture] = useState<'coming' | 'there' | 'none'>(() => (hasWebgl() ? 'coming' : 'none'));
  // The bench keeps the time once it is there; until then, or without it, the page does.
  useClock(session, picture !== 'there');
  if (debrief !== null) return <DebriefOf {...debrief} onLeave={onLeave} />;
  return (
    <JobScreen
      session={session}
      core={core}
      onDebrief={(at) => setDebrief({ finished: finishedHere(session, set), at })}
      onSave={() => saveSession(session, set, begunIn(window.location.hash))}
      handIn={{ code: lastCode(), save: (who) => handIn(session, set, who) }}
      onLeave={onLeave}
      notKept={notKept}
      sound={{
        control: <SoundControl desk={soundDesk} />,
        words: <SoundOf desk={soundDesk} session={session} />,
      }}
      picture={
        picture === 'none' ? null : (
          <BenchPlace session={session} onUp={() => setPicture('there')} onFault={() => setPicture('none')} />
        )
      }
    />
  );
}

/** Saves the finished work of a session for whoever set it; a device that kept nothing says the time of now. */
function handIn(session: Session, set: string | undefined, who: string): string {
  const now = Date.now();
  const { definition: def, scenario, from } = session;
  const begun = begunIn(window.location.hash) ?? now;
  return saveReturned({ def, scenario, job: session.job(), set, from, begun, ended: now }, who);
}

type OpenJob = { readonly session: Session; readonly notKept: Promise<string | null> };
