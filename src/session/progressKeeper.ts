import { type DBSchema, openDB } from 'idb';
import { laterOf } from './progress.ts';
import type { Skill } from './skill.ts';

interface ProgressSchema extends DBSchema {
  skills: { key: string; value: Skill };
}

/** The place on this device where it is kept what was practised. */
export interface ProgressKeeper {
  all(): Promise<readonly Skill[]>;
  put(skill: Skill): Promise<void>;
  /** Takes in records from elsewhere; of two of one piece the later stays. */
  merge(skills: readonly Skill[]): Promise<void>;
  erase(): Promise<void>;
}

/** Opens that place. Rejects where the browser gives none (private window, storage denied). */
export async function openProgress(name = 'freestroke-practice'): Promise<ProgressKeeper> {
  const db = await openDB<ProgressSchema>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore('skills', { keyPath: 'piece' });
    },
  });
  return {
    all: () => db.getAll('skills'),
    async put(skill) {
      await db.put('skills', skill);
    },
    async merge(skills) {
      const { store, done } = db.transaction('skills', 'readwrite');
      for (const skill of skills) {
        const own = await store.get(skill.piece);
        await store.put(own === undefined ? skill : laterOf(own, skill));
      }
      await done;
    },
    async erase() {
      await db.clear('skills');
    },
  };
}
