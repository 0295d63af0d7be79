import { useCallback, useEffect, useState } from 'react';
import { disclaimer } from '../jobs/cautions.ts';
import { BegunWork } from '../panels/first/BegunWork.tsx';
import { type Done, DoneWork, type Outcome } from '../panels/first/DoneWork.tsx';
import { FirstPage } from '../panels/first/FirstPage.tsx';
import { ForgetAll } from '../panels/first/ForgetAll.tsx';
import { OpenFile } from '../panels/first/OpenFile.tsx';
import type { KeptHead } from '../session/keep.ts';
import { isUnaidedPass, nextJob } from '../session/nextJob.ts';
import { choices, offers } from './offers.ts';
import { PiecesHere } from './PiecesHere.tsx';
import { debriefHash, jobHash, setHash } from './useRoute.ts';

/** What opening work needs comes in after the first screen is there. */
const loadWork = () => import('./openWork.ts');
const loadFile = () => import('./workFile.ts');

interface Works {
  readonly begun: readonly KeptHead[];
  readonly done: readonly KeptHead[];
}
const none: Works = { begun: [], done: [] };

/** The first screen with what this device has of earlier work. */
export function FirstPlace() {
  const [works, setWorks] = useState(none);
  const [saving, setSaving] = useState('');
  const read = useCallback(async () => setWorks((await (await loadWork()).keptWork()) ?? none), []);
  useEffect(() => void read(), [read]);
  const forget = async ({ id }: { id: string }) => {
    await (await loadWork()).discardWork(id);
    await read();
  };
  const save = async ({ id }: { id: string }) => setSaving((await (await loadFile()).saveKept(id)) ?? '');
  return (
    <FirstPage
      jobs={offers}
      disclaimer={disclaimer}
      standing={standingOf(works.done)}
      next={works.done.length === 0 ? null : nextJob(works.done, choices)}
      begun={
        <>
          <BegunWork
            works={works.begun}
            onGoOn={({ id }) => goOn(works.begun.find((one) => one.id === id))}
            onSave={save}
            onDiscard={forget}
          />
          {saving === '' ? null : <p role="alert">It could not be saved. {saving}</p>}
        </>
      }
      done={<DoneWork works={works.done.map(doneOf)} onSave={save} onForget={forget} />}
      file={<OpenFile onOpen={openFile} />}
      forget={<ForgetAll onForget={forgetAll} />}
      pieces={<PiecesHere />}
      onStart={(id, mode) => {
        window.location.hash = jobHash(id, mode);
      }}
    />
  );
}

function goOn(work: KeptHead | undefined): void {
  if (work === undefined) return;
  const { set, scenarioId, mode, begun } = work;
  window.location.hash = set === undefined ? jobHash(scenarioId, mode, begun) : setHash(set, begun);
}

/** Takes a file in and goes to its work; answers why it could not. */
async function openFile(file: Blob): Promise<readonly string[]> {
  const taken = await (await loadFile()).takeIn(file);
  if ('refused' in taken) return taken.refused;
  window.location.hash = taken.address;
  return [];
}

async function forgetAll(): Promise<void> {
  const practised = async () => (await (await import('../session/progressKeeper.ts')).openProgress()).erase();
  // where the browser keeps nothing there is nothing to forget
  await Promise.allSettled([(await loadWork()).discardAllWork(), practised()]);
  forgetSmallThings();
  window.location.reload();
}

/** Code, settings, work that was set here, what was worked out: all that this program put into the small storage. */
function forgetSmallThings(): void {
  try {
    for (const key of Object.keys(localStorage))
      if (key.startsWith('freestroke')) localStorage.removeItem(key);
  } catch {
    // a browser without that storage has kept nothing in it
  }
}

function outcomeOf(head: KeptHead): Outcome {
  const { marks, from, isFromFile } = head;
  if (isFromFile === true) return 'fromFile';
  if (from !== undefined) return 'again';
  if (isUnaidedPass(head)) return 'unaided';
  if (marks?.passed === true) return 'passed';
  return (marks?.stopWork.length ?? 0) > 0 ? 'stopped' : 'notPassed';
}

const doneOf = (head: KeptHead): Done => ({
  id: head.id,
  title: head.title,
  mode: head.mode,
  begun: head.begun,
  total: head.marks?.total ?? null,
  outcome: outcomeOf(head),
  address: debriefHash(head.id),
});

/** The best that became of each job, in a word or two. */
function standingOf(done: readonly KeptHead[]): Record<string, string> {
  const standing: Record<string, string> = {};
  const words: readonly (readonly [Outcome, string])[] = [
    ['notPassed', 'handed over'],
    ['stopped', 'handed over'],
    ['passed', 'passed'],
    ['unaided', 'passed without help'],
  ];
  for (const [outcome, word] of words) {
    for (const head of done) if (outcomeOf(head) === outcome) standing[head.scenarioId] = word;
  }
  return standing;
}
