import { useRef, useState } from 'react';
import type { Skill } from '../../session/skill.ts';
import { type PracticeDesk, useSkills } from './desk.ts';

/** What is kept of one's practice on this device: taken along as a file, brought back, erased. */
export function PracticeRecord({ desk }: { desk: PracticeDesk }) {
  const skills = useSkills(desk);
  const file = useRef<HTMLInputElement>(null);
  const [says, setSays] = useState<readonly string[]>([]);
  const trouble = desk.trouble();
  const bring = async (chosen: File | undefined) => {
    if (chosen === undefined) return;
    const wrong = await desk.take(await chosen.text());
    setSays(wrong.length > 0 ? [`Not taken in: ${chosen.name}.`, ...wrong.slice(0, 4)] : ['Taken in.']);
    if (file.current !== null) file.current.value = '';
  };
  return (
    <details className="record">
      <summary>Your practice record</summary>
      <p>
        {trouble === null
          ? `Kept on this device only: ${sumOf(skills)}.`
          : `This browser keeps nothing (${trouble}). Take the file along before you leave.`}
      </p>
      <div className="record-ways">
        <button type="button" className="button" onClick={() => desk.save()}>
          Save as a file
        </button>
        <label className="button record-file">
          Bring a file
          <input
            ref={file}
            type="file"
            accept=".json,application/json"
            onChange={(event) => void bring(event.target.files?.[0])}
          />
        </label>
        <button
          type="button"
          className="button"
          onClick={() => {
            void desk.erase();
            setSays(['Erased.']);
          }}
        >
          Erase it
        </button>
      </div>
      <div role="status">
        {says.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
    </details>
  );
}

function sumOf(skills: readonly Skill[]): string {
  const rounds = skills.reduce((sum, skill) => sum + skill.rounds.length, 0);
  return `${rounds} ${rounds === 1 ? 'round' : 'rounds'} on ${skills.length} ${skills.length === 1 ? 'piece' : 'pieces'}`;
}
