import { Suspense, use, useCallback, useEffect, useState } from 'react';
import { ReviewPage } from '../panels/debrief/ReviewPage.tsx';
import { createReplay, type Replay } from '../session/replaySession.ts';
import { createSeeker, type Moment, type Work } from '../session/seek.ts';
import { BenchPlace } from './BenchPlace.tsx';
import { core } from './core.ts';
import { hasWebgl } from './hasWebgl.ts';
import { OpenedJob } from './JobPlace.tsx';
import { type Finished, openBranch, openFinished } from './openDebrief.ts';
import type { Opened } from './openWork.ts';
import { RefusedWork } from './RefusedWork.tsx';

/** The debrief of work that is kept on this device, by the name under which it is kept. */
export function DebriefPlace({ id, onLeave }: { id: string; onLeave: () => void }) {
  const [opened] = useState(() => openFinished(id));
  return (
    <Suspense fallback={<p className="opening">Fetching the work.</p>}>
      <OpenedDebrief opened={opened} onLeave={onLeave} />
    </Suspense>
  );
}

function OpenedDebrief(props: { opened: ReturnType<typeof openFinished>; onLeave: () => void }) {
  const finished = use(props.opened);
  return 'refused' in finished ? (
    <RefusedWork {...finished} onLeave={props.onLeave} />
  ) : (
    <DebriefOf finished={finished} at={null} onLeave={props.onLeave} />
  );
}

/** Steps of the set's clock that are done again before the page may draw once more. */
const SLICE = 2500;

/** The debrief of work that is over; at: step of the set's clock that is shown first, null for the end. */
export function DebriefOf({
  finished,
  at,
  onLeave,
}: {
  finished: Finished;
  at: number | null;
  onLeave: () => void;
}) {
  const { replay, share } = useReplay(finished.work);
  const [picture, setPicture] = useState<'coming' | 'there' | 'none'>(() => (hasWebgl() ? 'coming' : 'none'));
  const [branch, setBranch] = useState<Promise<Opened> | null>(null);
  const begin = useCallback(
    (moment: Moment) => {
      if (replay !== null) setBranch(openBranch(finished, replay.seeker, moment));
    },
    [finished, replay],
  );
  if (branch !== null) {
    return (
      <Suspense fallback={<p className="opening">Laying the job out.</p>}>
        <OpenedJob opened={branch} set={finished.set} onLeave={onLeave} />
      </Suspense>
    );
  }
  if (replay === null) {
    return (
      <p className="opening">
        <label>
          Doing the work again. <progress max={1} value={share} />
        </label>
      </p>
    );
  }
  return (
    <ReviewPage
      replay={replay}
      core={core}
      at={at}
      hasBench={picture === 'there'}
      picture={
        picture === 'none' ? null : (
          <BenchPlace
            session={replay.session}
            onUp={() => setPicture('there')}
            onFault={() => setPicture('none')}
          />
        )
      }
      isAgain={finished.from !== null}
      onBranch={finished.work.terms.mode === 'assessed' ? null : begin}
      onLeave={onLeave}
    />
  );
}

/** Does work again in slices, so that the page stays alive meanwhile. */
function useReplay(work: Work): { replay: Replay | null; share: number } {
  const [state, setState] = useState<{ replay: Replay | null; share: number }>({ replay: null, share: 0 });
  useEffect(() => {
    const seeker = createSeeker(work);
    let timer: ReturnType<typeof setTimeout>;
    const goOn = () => {
      const share = seeker.lay(SLICE);
      setState({ share, replay: share === 1 ? createReplay(work, seeker) : null });
      if (share < 1) timer = setTimeout(goOn);
    };
    timer = setTimeout(goOn);
    return () => clearTimeout(timer);
  }, [work]);
  return state;
}
