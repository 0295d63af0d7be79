import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { Channel, Piece } from '../../jobs/practice/piece.ts';
import type { Session } from '../../session/session.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Core } from '../core.ts';
import { usePad } from '../gauge/usePad.ts';
import { createLogBook } from '../log/logBook.ts';
import { useClock } from '../useClock.ts';
import { useIsNarrow } from '../useIsNarrow.ts';
import { JobContext } from '../useJob.ts';
import type { Bout } from './bouts.ts';
import type { PracticeDesk } from './desk.ts';
import { PieceSubject } from './PieceSubject.tsx';
import { RoundEnd } from './RoundEnd.tsx';
import { TaskPanel } from './TaskPanel.tsx';
import { useRound } from './useRound.ts';
import { WorkPanel } from './WorkPanel.tsx';
import './practice.css';

/** What the app lends a practice page to be heard with. */
export interface PracticeSound {
  control: ReactNode;
  words: ReactNode;
  follow(session: Session): () => void;
}

/** The 3D bench over one session, as the app lends it; it keeps that session's time once it is up. */
export type BenchOf = (use: { session: Session; onUp: () => void; onFault: () => void }) => ReactNode;

/** A practice piece on one screen: what to do, the subjects, and the one in the hand. */
export function PracticePage(props: {
  piece: Piece;
  definition: SetDefinition;
  core: Core;
  sound: PracticeSound;
  desk: PracticeDesk;
  /** null where the browser shows no 3D: drawings do then. */
  bench: BenchOf | null;
  /** Number of the first round; any when there is none. */
  seed: number | null;
  onLeave: () => void;
}) {
  const { piece, definition, core, sound, desk, bench } = props;
  const [channels, setChannels] = useState<readonly Channel[]>(piece.channels);
  const round = useRound(piece, definition, desk, props.seed, channels);
  const { bouts, said, seed, level, lay } = round;
  const [chosen, setChosen] = useState<Bout | null>(null);
  const current = bouts.find((bout) => bout === chosen) ?? bouts[0];
  const isNarrow = useIsNarrow();
  const [wantsBench, setWantsBench] = useState(!isNarrow);
  const [isLost, setLost] = useState(false);
  const [up, setUp] = useState<Session | null>(null);
  // what is not to be seen is not shown in 3D either
  const isSeen = piece.channels.length === 0 || channels.includes('watch');
  const shown =
    bench !== null && wantsBench && !isLost && isSeen && current !== undefined ? current.session : null;

  const parts = useMemo(
    () =>
      new Map(bouts.map(({ session }) => [session, { session, core, log: createLogBook(session, core) }])),
    [bouts, core],
  );
  const answers = piece.answers(channels, level);
  const within = (bout: Bout, what: ReactNode) => (
    <JobContext.Provider
      key={`${seed} ${level} ${lay} ${bout.subject.name}`}
      value={parts.get(bout.session) ?? null}
    >
      {what}
    </JobContext.Provider>
  );
  return (
    <div className="practice" data-way={piece.way}>
      <header className="bar">
        <h1>
          <span className="bar-name">Freestroke</span>
          <span className="bar-job">{piece.title}</span>
          <span className="bar-mode">Practice piece</span>
        </h1>
        {bench === null || isLost ? null : (
          <button
            type="button"
            className="button quiet"
            aria-pressed={wantsBench}
            onClick={() => setWantsBench(!wantsBench)}
          >
            Bench
          </button>
        )}
        {sound.control}
        <button type="button" className="button quiet" onClick={props.onLeave}>
          Leave
        </button>
      </header>
      <TaskPanel
        piece={piece}
        subject={current?.subject}
        level={level}
        channels={channels}
        seed={seed}
        isAided={round.aided}
        desk={desk}
        onLevel={round.next}
        onChannels={setChannels}
        onTip={round.takeTip}
      />
      <main className="subjects" data-count={bouts.length} data-bench={shown !== null}>
        {bouts.length < 2 ? null : (
          <nav className="subject-tabs" aria-label="In this round">
            {bouts.map((bout) => (
              <button
                key={bout.subject.name}
                type="button"
                aria-pressed={bout === current}
                onClick={() => setChosen(bout)}
              >
                {bout.subject.name}
              </button>
            ))}
          </nav>
        )}
        <div className="subject-cards">
          {bouts.map((bout) =>
            within(
              bout,
              <PieceSubject
                piece={piece}
                bout={bout}
                isCurrent={bout === current}
                isCovered={!isSeen && !said.has(bout)}
                hasBench={shown !== null}
                said={said.get(bout) ?? null}
                answers={answers}
                onTake={() => setChosen(bout)}
              />,
            ),
          )}
        </div>
        {shown === null || bench === null ? null : (
          <section
            className="bench-beside"
            aria-label="The bench in 3D"
            key={`${seed} ${lay} ${current?.subject.name}`}
          >
            {bench({ session: shown, onUp: () => setUp(shown), onFault: () => setLost(true) })}
          </section>
        )}
        <div className="practice-heard">
          {channels.includes('listen') || piece.channels.length === 0 ? sound.words : null}
        </div>
      </main>
      <aside className="in-hands" aria-label="In the hand">
        {bouts.map((bout) =>
          within(
            bout,
            <WorkPanel
              piece={piece}
              bout={bout}
              isShown={bout === current}
              isNew={lay > 0 || said.size > 0}
              hasGauge={piece.channels.length === 0 || channels.includes('gauge') || said.has(bout)}
              answers={answers}
              judgement={said.get(bout)?.judgement ?? null}
              end={
                bout === current ? (
                  <RoundEnd piece={piece} round={round} desk={desk} onTake={setChosen} />
                ) : null
              }
              onSay={(answer) => round.judge(bout, answer)}
            />,
          ),
        )}
      </aside>
      {current === undefined ? null : (
        <Alive
          key={`${seed} ${level} ${lay} ${current.subject.name}`}
          session={current.session}
          keepsTime={up !== current.session || shown === null}
          follow={piece.channels.length === 0 || channels.includes('listen') ? sound.follow : null}
        />
      )}
    </div>
  );
}

/** Lets the time of the subject in the hand go by, and lets it be heard and held by a gamepad. */
function Alive(props: { session: Session; keepsTime: boolean; follow: PracticeSound['follow'] | null }) {
  const { session, keepsTime, follow } = props;
  useClock(session, keepsTime);
  usePad(session);
  useEffect(() => follow?.(session), [follow, session]);
  // A pump that is laid down is let go of.
  useEffect(
    () => () => {
      if (session.sim().hand.grasp !== null) session.do({ do: 'letGo' });
    },
    [session],
  );
  return null;
}
