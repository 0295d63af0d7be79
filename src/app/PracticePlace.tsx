import { useState } from 'react';
import setText from '../../models/bench-set/set.json?raw';
import { SoundControl, SoundWords } from '../bench/sound/SoundControl.tsx';
import { pieces } from '../jobs/practice/pieces.ts';
import { problemLine } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { PracticePage } from '../panels/practice/PracticePage.tsx';
import { core } from './core.ts';
import { soundDesk } from './soundDesk.ts';

/** A practice piece by its name; throws where the set's definition is wrong or no piece has the name. */
export function PracticePlace({
  id,
  seed,
  onLeave,
}: {
  id: string;
  seed: number | null;
  onLeave: () => void;
}) {
  const [bench] = useState(() => {
    const set = readSet(setText);
    const piece = pieces.find((one) => one.id === id);
    if (!set.ok) throw new Error(set.problems.map(problemLine).join('\n'));
    if (piece === undefined) throw new Error(`no practice piece ${id}`);
    return { definition: set.value, piece };
  });
  return (
    <PracticePage
      {...bench}
      core={core}
      seed={seed}
      sound={{
        control: <SoundControl desk={soundDesk} />,
        words: <SoundWords desk={soundDesk} />,
        follow: soundDesk.follow,
      }}
      onLeave={onLeave}
    />
  );
}
