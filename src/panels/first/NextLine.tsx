import type { NextJob, Reason } from '../../session/nextJob.ts';

const reasons: Readonly<Record<Reason, string>> = {
  first: 'Every stage is shown and explained.',
  again: 'It was not passed last time.',
  alone: 'One by yourself; hints only if you ask.',
  secondFault: 'One fault found without help; a second, different one shows that it was no luck.',
  harder: 'The easier jobs are behind you: two different faults found without help.',
  another: 'Not passed without help yet.',
};
const ways = { guided: 'guided', practice: 'practice', assessed: 'assessed' } as const;

/** What is worth doing next and why, to be chosen or not. */
export function NextLine({
  next,
  title,
  onTake,
}: {
  next: NextJob;
  title: string;
  onTake: (next: NextJob) => void;
}) {
  return (
    <p className="next-line">
      <span className="next-words">
        <b>Worth doing next: {title}</b>, {ways[next.mode]}. {reasons[next.why]}
      </span>
      <button type="button" className="button" onClick={() => onTake(next)}>
        Choose it
      </button>
    </p>
  );
}
