import { problemLine } from '../jobs/problems.ts';
import { saveFile } from '../packages/saveFile.ts';
import type { PracticeDesk } from '../panels/practice/desk.ts';
import { afterRound, laterOf } from '../session/progress.ts';
import { progressText, readProgress } from '../session/progressFile.ts';
import { openProgress, type ProgressKeeper } from '../session/progressKeeper.ts';
import type { Skill } from '../session/skill.ts';

/** A desk whose record has been read, on this device or, where nothing can be kept, for as long as the page is open. */
export async function openPracticeDesk(): Promise<PracticeDesk> {
  const kept = await openProgress().then(
    (keeper): { keeper: ProgressKeeper | null; why: string | null } => ({ keeper, why: null }),
    (problem: unknown) => ({
      keeper: null,
      why: problem instanceof Error ? problem.message : String(problem),
    }),
  );
  const first = kept.keeper === null ? [] : await kept.keeper.all();
  return deskOn(kept.keeper, kept.why, first);
}

function deskOn(keeper: ProgressKeeper | null, why: string | null, first: readonly Skill[]): PracticeDesk {
  let skills = first;
  let trouble = why;
  const listeners = new Set<() => void>();
  const set = (next: readonly Skill[]) => {
    skills = next;
    for (const listener of listeners) listener();
  };
  const keep = async (work: (keeper: ProgressKeeper) => Promise<void>) => {
    try {
      if (keeper !== null) await work(keeper);
    } catch (problem) {
      trouble = problem instanceof Error ? problem.message : String(problem);
      set([...skills]);
    }
  };
  const putIn = (all: readonly Skill[], skill: Skill) => [
    ...all.filter(({ piece }) => piece !== skill.piece),
    skill,
  ];
  return {
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    skills: () => skills,
    trouble: () => trouble,
    done({ id, guess }, round) {
      const before = skills.find(({ piece }) => piece === id) ?? null;
      const after = afterRound(before, id, guess, { at: Date.now(), ...round });
      set(putIn(skills, after));
      void keep((own) => own.put(after));
    },
    save: () => saveFile('freestroke-practice.json', progressText(skills), 'application/json'),
    async take(text) {
      const read = readProgress(text);
      if (!read.ok) return read.problems.map(problemLine);
      const merged = read.value.reduce((all, skill) => {
        const own = all.find(({ piece }) => piece === skill.piece);
        return putIn(all, own === undefined ? skill : laterOf(own, skill));
      }, skills);
      set(merged);
      await keep((own) => own.merge(read.value));
      return [];
    },
    async erase() {
      set([]);
      await keep((own) => own.erase());
    },
  };
}
