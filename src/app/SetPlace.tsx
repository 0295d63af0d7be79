import { useState } from 'react';
import { problemLine } from '../jobs/problems.ts';
import { SetWorkCard } from '../panels/first/SetWorkCard.tsx';
import { unpackAssignment } from '../session/assignment.ts';
import { JobPlace } from './JobPlace.tsx';
import { ownJob } from './offers.ts';

/** Work that an instructor set: what it asks for, and after that the job itself. */
export function SetPlace({
  packed,
  begun,
  onLeave,
}: {
  packed: string;
  begun: number | null;
  onLeave: () => void;
}) {
  const [read] = useState(() => unpackAssignment(packed, ownJob));
  const [isBegun, setBegun] = useState(begun !== null);
  if (!read.ok)
    return (
      <main className="opening">
        <h1>This work cannot be opened</h1>
        <p>The link is not as it left the instructor’s desk. Ask for it once more, or for the file.</p>
        <ul>
          {read.problems.map((problem) => (
            <li key={problem.path + problem.found}>{problemLine(problem)}</li>
          ))}
        </ul>
        <p>
          <a href="#/">First screen</a>
        </p>
      </main>
    );
  const work = read.value;
  if (!isBegun) return <SetWorkCard work={work} onBegin={() => setBegun(true)} />;
  return (
    <JobPlace
      file={work.scenario}
      mode={work.mode}
      begun={begun}
      set={{ packed, hints: work.hints }}
      onLeave={onLeave}
    />
  );
}
