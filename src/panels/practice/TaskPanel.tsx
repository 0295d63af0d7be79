import type { Channel, Piece } from '../../jobs/practice/piece.ts';

const channelNames: Readonly<Record<Channel, { name: string; text: string }>> = {
  watch: { name: 'Watch', text: 'the section drawing' },
  gauge: { name: 'Gauge', text: 'force against travel' },
  listen: { name: 'Listen', text: 'what it sounds like' },
};

/** What to do, how hard it is, and by what it may be told. */
export function TaskPanel(props: {
  piece: Piece;
  level: number;
  channels: readonly Channel[];
  seed: number;
  said: number;
  right: number;
  count: number;
  onLevel: (level: number) => void;
  onChannels: (channels: readonly Channel[]) => void;
  onNext: (level: number) => void;
}) {
  const { piece, level, channels, seed, said, right, count, onLevel, onChannels, onNext } = props;
  const isDone = said === count;
  const harder = isDone && right === count ? piece.levels[level + 1] : undefined;
  const toggle = (channel: Channel) => {
    const next = piece.channels.filter((one) =>
      one === channel ? !channels.includes(one) : channels.includes(one),
    );
    // Something has to be left to tell it by.
    if (next.length > 0) onChannels(next);
  };
  return (
    <section className="task" aria-label="The task">
      <p className="task-words">{piece.task}</p>
      <fieldset className="task-channels">
        <legend>Tell it by</legend>
        {piece.channels.map((channel) => (
          <label key={channel}>
            <input
              type="checkbox"
              checked={channels.includes(channel)}
              onChange={() => toggle(channel)}
              aria-disabled={channels.length === 1 && channels.includes(channel)}
            />
            <span>
              <b>{channelNames[channel].name}</b>{' '}
              <span className="task-text">{channelNames[channel].text}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <label className="task-level">
        <span>How many, how hard</span>
        <select value={level} onChange={(event) => onLevel(Number(event.target.value))}>
          {piece.levels.map((words, index) => (
            <option key={words} value={index}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <p className="task-state" role="status">
        {said === 0 ? '' : isDone ? doneWords(right, count) : `${said} of ${count} said.`}
      </p>
      <div className="task-next">
        {harder === undefined ? null : (
          <button type="button" className="button" onClick={() => onNext(level + 1)}>
            Next step: {harder.charAt(0).toLowerCase() + harder.slice(1)}
          </button>
        )}
        <button type="button" className={isDone ? 'button strong' : 'button'} onClick={() => onNext(level)}>
          Other pumps
        </button>
      </div>
      <p className="task-seed">
        These are pumps no. <span className="figures">{seed}</span>; the same number brings the same pumps.
      </p>
    </section>
  );
}

function doneWords(right: number, count: number): string {
  if (right === count) return 'All told right.';
  return right === 0
    ? 'None told right. Read what each would have shown.'
    : `${right} of ${count} told right.`;
}
