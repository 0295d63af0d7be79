import { useEffect, useState } from 'react';
import { type Begun, BegunWork } from '../panels/first/BegunWork.tsx';
import { jobHash, setHash } from './useRoute.ts';

/** What opening work needs comes in after the first screen is there. */
const loadWork = () => import('./openWork.ts');

type Work = Begun & { readonly scenarioId: string; readonly set?: string };

/** The jobs that were begun on this device and left. */
export function BegunHere() {
  const [works, setWorks] = useState<readonly Work[]>([]);
  useEffect(() => {
    let isShown = true;
    const read = async () => {
      const heads = await (await loadWork()).begunWork();
      if (isShown) setWorks(heads);
    };
    void read();
    return () => {
      isShown = false;
    };
  }, []);
  return (
    <BegunWork
      works={works}
      onGoOn={({ id, mode, begun }) => {
        const work = works.find((one) => one.id === id);
        if (work?.set !== undefined) window.location.hash = setHash(work.set, begun);
        else if (work !== undefined) window.location.hash = jobHash(work.scenarioId, mode, begun);
      }}
      onDiscard={async ({ id }) => {
        await (await loadWork()).discardWork(id);
        setWorks((all) => all.filter((one) => one.id !== id));
      }}
    />
  );
}
