import { Suspense, use, useState } from 'react';
import setText from '../../models/bench-set/set.json?raw';
import { SoundControl, SoundWords } from '../bench/sound/SoundControl.tsx';
import { pieces } from '../jobs/practice/pieces.ts';
import { problemLine } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import type { PracticeDesk } from '../panels/practice/desk.ts';
import { type BenchOf, PracticePage } from '../panels/practice/PracticePage.tsx';
import { BenchPlace } from './BenchPlace.tsx';
import { core } from './core.ts';
import { hasWebgl } from './hasWebgl.ts';
import { openPracticeDesk } from './practiceDesk.ts';
import { soundDesk } from './soundDesk.ts';

interface Props {
  readonly id: string;
  readonly seed: number | null;
  readonly onLeave: () => void;
}

/** A practice piece by its name, once it is known what was practised before. */
export function PracticePlace(props: Props) {
  const [desk] = useState(openPracticeDesk);
  return (
    <Suspense fallback={<p className="opening">Laying the pumps out.</p>}>
      <PieceAtDesk {...props} coming={desk} />
    </Suspense>
  );
}

/** Throws where the set's definition is wrong or no piece has the name. */
function PieceAtDesk({ id, seed, onLeave, coming }: Props & { coming: Promise<PracticeDesk> }) {
  const desk = use(coming);
  const [place] = useState(() => {
    const set = readSet(setText);
    const piece = pieces.find((one) => one.id === id);
    if (!set.ok) throw new Error(set.problems.map(problemLine).join('\n'));
    if (piece === undefined) throw new Error(`no practice piece ${id}`);
    return { definition: set.value, piece, bench: hasWebgl() ? benchOf : null };
  });
  return (
    <PracticePage
      {...place}
      core={core}
      desk={desk}
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

const benchOf: BenchOf = (use3d) => <BenchPlace {...use3d} />;
