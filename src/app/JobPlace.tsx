import { useState } from 'react';
import setText from '../../models/bench-set/set.json?raw';
import { SoundControl, SoundOf } from '../bench/sound/SoundControl.tsx';
import { problemLine } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { type Mode, scenarioFrom } from '../jobs/scenario.ts';
import { JobScreen } from '../panels/JobScreen.tsx';
import { useClock } from '../panels/useClock.ts';
import { createSession } from '../session/session.ts';
import { BenchPlace, loadBench } from './BenchPlace.tsx';
import { core } from './core.ts';
import { hasWebgl } from './hasWebgl.ts';
import { soundDesk } from './soundDesk.ts';

/** Opens a job from its file; throws when the file is wrong, with everything that is wrong in it. */
function openSession(file: unknown, mode: Mode) {
  const set = readSet(setText);
  const scenario = scenarioFrom(file);
  if (!set.ok) throw new Error(set.problems.map(problemLine).join('\n'));
  if (!scenario.ok) throw new Error(scenario.problems.map(problemLine).join('\n'));
  return createSession({ def: set.value, scenario: scenario.value, seed: scenario.value.seed, mode });
}

/** Fetches the bench ahead of time where it can be shown. */
export function prepare(): void {
  if (hasWebgl()) void loadBench();
}

/** A job with its bench: in 3D where the browser can, as a section drawing where it cannot. */
export function JobPlace({ file, mode, onLeave }: { file: unknown; mode: Mode; onLeave: () => void }) {
  const [session] = useState(() => openSession(file, mode));
  const [picture, setPicture] = useState<'coming' | 'there' | 'none'>(() => (hasWebgl() ? 'coming' : 'none'));
  // The bench keeps the time once it is there; until then, or without it, the page does.
  useClock(session, picture !== 'there');
  return (
    <JobScreen
      session={session}
      core={core}
      onLeave={onLeave}
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
