import { useMemo } from 'react';
import type { ActUse } from '../../jobs/practice/piece.ts';
import { ActForm } from '../acts/ActForm.tsx';
import { type Act, initialValues } from '../acts/act.ts';
import { allActs } from '../acts/catalogue.ts';
import { useFact } from '../useJob.ts';
import '../acts/acts.css';

interface Listed {
  readonly act: Act;
  readonly start: ActUse['start'];
}

/** The few acts that a piece allows, in order; those that make no sense as the set stands are left out. */
export function PieceActs({ uses }: { uses: readonly ActUse[] }) {
  const listed = useMemo((): Listed[] => {
    const all = allActs();
    return uses.flatMap(({ act: id, start }) => {
      const found = all.find(({ act }) => act.id === id);
      return found === undefined ? [] : [{ act: found.act, start }];
    });
  }, [uses]);
  const shown = useFact((sim) =>
    listed
      .filter(({ act }) => act.shown?.(sim) ?? true)
      .map(({ act }) => act.id)
      .join(' '),
  ).split(' ');
  return (
    <section className="piece-acts" aria-label="What you can do">
      {listed
        .filter(({ act }) => shown.includes(act.id))
        .map(({ act, start }) => (
          <ActForm key={act.id} act={act} start={{ ...initialValues(act), ...start }} />
        ))}
    </section>
  );
}
