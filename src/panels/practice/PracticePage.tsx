import { type ReactNode, useEffect, useMemo, useState } from 'react';
import type { Channel, Judgement, Piece } from '../../jobs/practice/piece.ts';
import type { Session } from '../../session/session.ts';
import type { SetDefinition } from '../../sim/set/definition.ts';
import type { Core } from '../core.ts';
import { usePad } from '../gauge/usePad.ts';
import { createLogBook } from '../log/logBook.ts';
import { useClock } from '../useClock.ts';
import { JobContext } from '../useJob.ts';
import { anySeed, type Bout, judgeBout, openRound } from './bouts.ts';
import { HandPanel } from './HandPanel.tsx';
import { SubjectCard } from './SubjectCard.tsx';
import { TaskPanel } from './TaskPanel.tsx';
import './practice.css';

/** What the app lends a practice page to be heard with. */
export interface PracticeSound {
  control: ReactNode;
  words: ReactNode;
  follow(session: Session): () => void;
}

interface Said {
  answer: string;
  judgement: Judgement;
}

/** A practice piece on one screen: what to do, the subjects side by side, and the one in the hand. */
export function PracticePage(props: {
  piece: Piece;
  definition: SetDefinition;
  core: Core;
  sound: PracticeSound;
  /** Number of the first round; any when there is none. */
  seed: number | null;
  onLeave: () => void;
}) {
  const { piece, definition, core, sound } = props;
  const [level, setLevel] = useState(0);
  const [seed, setSeed] = useState(() => props.seed ?? anySeed());
  const [channels, setChannels] = useState<readonly Channel[]>(piece.channels);
  const bouts = useMemo(() => openRound(piece, definition, seed, level), [piece, definition, seed, level]);
  const [said, setSaid] = useState<ReadonlyMap<Bout, Said>>(new Map());
  const [chosen, setChosen] = useState<Bout | null>(null);
  const current = bouts.find((bout) => bout === chosen) ?? bouts[0];

  const next = (nextLevel: number) => {
    setLevel(nextLevel);
    setSeed(anySeed());
    setSaid(new Map());
  };
  const parts = useMemo(
    () =>
      new Map(bouts.map(({ session }) => [session, { session, core, log: createLogBook(session, core) }])),
    [bouts, core],
  );
  const here = bouts.flatMap((bout) => said.get(bout) ?? []);
  const answers = piece.answers(channels, level);
  const words = (answer: string) => answers.find(({ id }) => id === answer)?.words.split(':')[0] ?? answer;
  return (
    <div className="practice">
      <header className="bar">
        <h1>
          <span className="bar-name">Freestroke</span>
          <span className="bar-job">{piece.title}</span>
          <span className="bar-mode">Practice piece</span>
        </h1>
        {sound.control}
        <button type="button" className="button quiet" onClick={props.onLeave}>
          Leave
        </button>
      </header>
      <TaskPanel
        piece={piece}
        level={level}
        channels={channels}
        seed={seed}
        said={here.length}
        right={here.filter(({ judgement }) => judgement.right).length}
        count={bouts.length}
        onLevel={next}
        onChannels={setChannels}
        onNext={next}
      />
      <main className="subjects" data-count={bouts.length}>
        <nav className="subject-tabs" aria-label="Pumps">
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
        {bouts.map((bout) => {
          const own = said.get(bout) ?? null;
          return (
            <JobContext.Provider
              key={`${seed}-${level}-${bout.subject.name}`}
              value={parts.get(bout.session) ?? null}
            >
              <SubjectCard
                name={bout.subject.name}
                isCurrent={bout === current}
                isCovered={!channels.includes('watch') && own === null}
                said={own === null ? null : `said: ${words(own.answer).toLowerCase()}`}
                judgement={own?.judgement ?? null}
                onTake={() => setChosen(bout)}
              />
            </JobContext.Provider>
          );
        })}
        <div className="practice-heard">{channels.includes('listen') ? sound.words : null}</div>
      </main>
      <aside className="in-hands" aria-label="In the hand">
        {bouts.map((bout) => (
          <JobContext.Provider
            key={`${seed}-${level}-${bout.subject.name}`}
            value={parts.get(bout.session) ?? null}
          >
            <HandPanel
              name={bout.subject.name}
              isShown={bout === current}
              hasGauge={channels.includes('gauge') || said.has(bout)}
              answers={answers}
              judgement={said.get(bout)?.judgement ?? null}
              onSay={(answer) => {
                const judgement = judgeBout(piece, definition, bout, level, answer, channels);
                setSaid(new Map([...said, [bout, { answer, judgement }]]));
              }}
            />
          </JobContext.Provider>
        ))}
      </aside>
      {current === undefined ? null : (
        <Alive session={current.session} follow={channels.includes('listen') ? sound.follow : null} />
      )}
    </div>
  );
}

/** Lets the time of the subject in the hand go by, and lets it be heard and held by a gamepad. */
function Alive({ session, follow }: { session: Session; follow: PracticeSound['follow'] | null }) {
  useClock(session, true);
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
