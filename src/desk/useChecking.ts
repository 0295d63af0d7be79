import { useEffect, useRef, useState } from 'react';
import type { Alike, Checked } from './checked.ts';
import { checkAside } from './checking.ts';
import type { CheckGround } from './checkWorker.ts';

/** How far the checking has come. */
export interface Checking {
  readonly checked: readonly Checked[];
  readonly of: number;
  readonly alike: readonly Alike[];
  readonly isWorking: boolean;
  /** Seconds that the last pile took; null while it is worked on. */
  readonly seconds: number | null;
  readonly failed: string | null;
}

const nothing: Checking = { checked: [], of: 0, alike: [], isWorking: false, seconds: null, failed: null };
/** Between two renders of a growing pile, ms: the page stays quick however fast files are done. */
const RENDER_EVERY = 250;

/** Checks piles of files aside; a new pile takes the old one's place. */
export function useChecking() {
  const [checking, setChecking] = useState<Checking>(nothing);
  const abort = useRef<AbortController | null>(null);
  useEffect(() => () => abort.current?.abort(), []);

  const check = async (ground: CheckGround, files: readonly File[]): Promise<void> => {
    abort.current?.abort();
    const mine = new AbortController();
    abort.current = mine;
    const checked: Checked[] = [];
    const began = performance.now();
    let shown = 0;
    const show = (more: Partial<Checking>) => {
      if (!mine.signal.aborted) setChecking((was) => ({ ...was, checked: [...checked], ...more }));
    };
    setChecking({ ...nothing, of: files.length, isWorking: true });
    const tell = (one: Checked) => {
      checked.push(one);
      const now = performance.now();
      if (now - shown > RENDER_EVERY) {
        shown = now;
        show({});
      }
    };
    try {
      const alike = await checkAside(ground, files, tell, mine.signal);
      show({ alike, isWorking: false, seconds: (performance.now() - began) / 1000 });
    } catch (problem) {
      show({ isWorking: false, failed: problem instanceof Error ? problem.message : String(problem) });
    }
  };
  const stop = () => {
    abort.current?.abort();
    setChecking((was) => ({ ...was, isWorking: false }));
  };
  return { checking, check, stop };
}
