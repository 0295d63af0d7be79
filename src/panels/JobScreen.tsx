import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import type { Session } from '../session/session.ts';
import { ActsPanel } from './acts/ActsPanel.tsx';
import { BenchRegion } from './bench/BenchRegion.tsx';
import { JobCard } from './card/JobCard.tsx';
import type { Core } from './core.ts';
import { HandGauge } from './gauge/HandGauge.tsx';
import { usePad } from './gauge/usePad.ts';
import { useTrace } from './gauge/useTrace.ts';
import { Guide } from './guide/Guide.tsx';
import { KeyHelp } from './help/KeyHelp.tsx';
import { LeaveButton } from './help/LeaveButton.tsx';
import { NotKept } from './help/NotKept.tsx';
import { LogStrip } from './log/LogStrip.tsx';
import { createLogBook } from './log/logBook.ts';
import type { HandingIn } from './marks/HandIn.tsx';
import { MarkingPage } from './marks/MarkingPage.tsx';
import { SlowPanel } from './slow/SlowPanel.tsx';
import { ToolRoll } from './tools/ToolRoll.tsx';
import { JobContext, useFact, useJob, useView } from './useJob.ts';
import './job.css';

const modeNames = { guided: 'Guided', practice: 'Practice', assessed: 'Assessed' } as const;

/** What the app lays into the job screen: the switch for sound in the bar, and what sounds in words on the bench. */
export interface SoundPieces {
  control: ReactNode;
  words: ReactNode;
}

/** The whole job on one screen. picture: the 3D bench, or null where it cannot be shown. */
export function JobScreen(props: {
  session: Session;
  core: Core;
  picture: ReactNode;
  sound?: SoundPieces;
  /** Comes to the reason when what is done is not being kept, or to null. */
  notKept?: Promise<string | null>;
  /** Opens the debrief at a step of the set's clock, or (null) at the end of the work. */
  onDebrief?: (at: number | null) => void;
  /** Saves the work as far as it has come, as a file. */
  onSave?: () => void;
  /** How finished work is saved to be passed on. */
  handIn?: HandingIn;
  onLeave: () => void;
}) {
  const { session, core } = props;
  const parts = useMemo(() => ({ session, core, log: createLogBook(session, core) }), [session, core]);
  useEffect(() => parts.log.open(), [parts]);
  return (
    <JobContext.Provider value={parts}>
      <Screen
        picture={props.picture}
        sound={props.sound}
        onDebrief={props.onDebrief ?? null}
        onSave={props.onSave ?? null}
        handIn={props.handIn ?? null}
        onLeave={props.onLeave}
      />
      {props.notKept === undefined ? null : <NotKept notKept={props.notKept} />}
    </JobContext.Provider>
  );
}

type Tab = 'card' | 'tools' | 'feel';
const tabs: readonly { id: Tab; name: string }[] = [
  { id: 'card', name: 'Card' },
  { id: 'tools', name: 'Tools' },
  { id: 'feel', name: 'Feel' },
];

function Screen({
  picture,
  sound,
  onDebrief,
  onSave,
  handIn,
  onLeave,
}: {
  picture: ReactNode;
  sound: SoundPieces | undefined;
  onDebrief: ((at: number | null) => void) | null;
  onSave: (() => void) | null;
  handIn: HandingIn | null;
  onLeave: () => void;
}) {
  const { session } = useJob();
  const [tab, setTab] = useState<Tab>('card');
  const [isFolded, setFolded] = useState(false);
  const [hasDrawing, setDrawing] = useState(false);
  const [isSlow, setSlow] = useState(false);
  const acts = useRef<HTMLDivElement>(null);
  const bar = useRef<HTMLElement>(null);
  const trace = useTrace();
  usePad(session);
  const canHold = useFact(({ pump, assembly }) => pump.rest !== null && assembly.parts.plunger === 'fitted');
  const isHeld = useFact(({ hand }) => hand.grasp !== null);
  const isLive = useView((view) => view.live);
  const isRunning = useFact(({ engine }) => engine.running);
  const hasFeel = trace.kind !== null || isHeld;
  const drawing = picture === null ? 'alone' : hasDrawing ? 'beside' : 'off';
  const showTab = (next: Tab) => {
    setTab(next);
    setSlow(false);
    // The new sheet starts at its head, under the bench.
    const top = bar.current?.offsetHeight ?? 0;
    if (window.scrollY > top) window.scrollTo(0, top);
  };
  useEffect(() => {
    // where the page itself scrolls, the stroke's sheet has all the room there is
    if (isSlow) window.scrollTo(0, bar.current?.offsetHeight ?? 0);
  }, [isSlow]);

  return (
    <div
      className="job"
      data-tab={isSlow ? 'slow' : tab}
      data-folded={isFolded}
      data-feel={hasFeel}
      data-live={isLive}
      data-running={isRunning}
    >
      <header ref={bar} className="bar">
        <button
          type="button"
          className="button quiet fold"
          aria-expanded={!isFolded}
          onClick={() => setFolded(!isFolded)}
        >
          {isFolded ? 'Show card' : 'Fold card'}
        </button>
        <h1>
          <span className="bar-name">Freestroke</span>
          <span className="bar-job">{session.scenario.title}</span>
          <span className="bar-mode">
            {modeNames[session.mode]}
            {session.from === null ? '' : ', tried again'}
          </span>
        </h1>
        {sound?.control}
        <KeyHelp />
        <LeaveButton onLeave={onLeave} onSave={onSave} />
      </header>
      <div className="side">
        <Guide />
        <JobCard />
        <ToolRoll />
      </div>
      <main className="middle" data-slow={isSlow}>
        <BenchRegion
          picture={picture}
          heard={sound?.words}
          drawing={drawing}
          onDrawing={() => setDrawing(!hasDrawing)}
          onLeave={() => firstButton(acts.current)?.focus()}
          isSlow={isSlow}
          onSlow={session.mode === 'assessed' ? null : () => setSlow(!isSlow)}
        />
        <LogStrip />
        <nav className="tabs" aria-label="Sheet">
          {tabs.map(({ id, name }) => (
            <button key={id} type="button" aria-pressed={tab === id && !isSlow} onClick={() => showTab(id)}>
              {name}
              {id === 'feel' && hasFeel ? <span className="tab-mark">in hand</span> : null}
            </button>
          ))}
        </nav>
        <div ref={acts} className="acts-place">
          <ActsPanel />
        </div>
        {isSlow ? <SlowPanel onClose={() => setSlow(false)} /> : null}
      </main>
      <aside className="feel" aria-label="Feel">
        <HandGauge trace={trace} canHold={canHold} />
      </aside>
      <MarkingPage onLeave={onLeave} onDebrief={onDebrief} handIn={handIn} />
    </div>
  );
}

const firstButton = (place: HTMLElement | null) => place?.querySelector('button') ?? null;
