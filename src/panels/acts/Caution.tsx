import type { CautionId } from '../../jobs/cautions.ts';
import { useJob } from '../useJob.ts';

/** Cautions at the act: their titles always, the full words on opening. */
export function Caution({ ids }: { ids: readonly CautionId[] }) {
  const { core } = useJob();
  if (ids.length === 0) return null;
  const titles = ids.slice(0, 2).map((id) => core.cautionWords[id].title);
  const more = ids.length - titles.length;
  return (
    <details className="caution">
      <summary>
        <b>Caution</b> {titles.join('. ')}.{more > 0 ? ` And ${more} more.` : ''}
      </summary>
      {ids.map((id) => (
        <p key={id}>
          <b>{core.cautionWords[id].title}.</b> {core.cautionWords[id].text}
        </p>
      ))}
    </details>
  );
}
