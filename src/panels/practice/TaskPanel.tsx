import type { Channel, Piece, Subject } from '../../jobs/practice/piece.ts';
import { type PracticeDesk, useSkill } from './desk.ts';
import { dueWords } from './dueWords.ts';
import { PracticeRecord } from './PracticeRecord.tsx';

const channelNames: Readonly<Record<Channel, { name: string; text: string }>> = {
  watch: { name: 'Watch', text: 'the section drawing' },
  gauge: { name: 'Gauge', text: 'force against travel' },
  listen: { name: 'Listen', text: 'what it sounds like' },
};

/** What to do, what is known of it, how hard it is, and by what it may be told. */
export function TaskPanel(props: {
  piece: Piece;
  subject: Subject | undefined;
  level: number;
  channels: readonly Channel[];
  seed: number;
  isAided: boolean;
  desk: PracticeDesk;
  onLevel: (level: number) => void;
  onChannels: (channels: readonly Channel[]) => void;
  onTip: () => void;
}) {
  const { piece, subject, level, seed, isAided, desk, onLevel, onTip } = props;
  return (
    <section className="task" aria-label="The task">
      <p className="task-words">{piece.task}</p>
      {subject === undefined || subject.told.length === 0 ? null : (
        <ul className="task-told">
          {subject.told.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {piece.channels.length === 0 ? null : <Channels {...props} />}
      <label className="task-level">
        <span>Difficulty</span>
        <select value={level} onChange={(event) => onLevel(Number(event.target.value))}>
          {piece.levels.map((words, index) => (
            <option key={words} value={index}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <SoFar piece={piece} desk={desk} />
      <details
        className="task-tip"
        key={seed}
        onToggle={(event) => {
          if (event.currentTarget.open && !isAided) onTip();
        }}
      >
        <summary>A tip</summary>
        <p>{piece.tip}</p>
        <p className="task-seed">A round with the tip does not move the next date on.</p>
      </details>
      <PracticeRecord desk={desk} />
      <p className="task-seed">
        This is round no. <span className="figures">{seed}</span>; the same number brings the same.
      </p>
    </section>
  );
}

/** How many of the last rounds are told of. */
const LATELY = 5;

/** How the last rounds went and when the next is due, in one line. */
function SoFar({ piece, desk }: { piece: Piece; desk: PracticeDesk }) {
  const skill = useSkill(desk, piece.id);
  if (skill === null) return null;
  const last = skill.rounds.slice(-LATELY);
  const right = last.filter((round) => round.right === round.of).length;
  return (
    <p className="task-seed">
      {last.length === 1 ? 'Your last round: ' : `Of your last ${last.length} rounds, right: `}
      {last.length === 1 ? (right === 1 ? 'right' : 'not right') : right}. Due: {dueWords(skill, Date.now())}.
      The difficulty follows you.
    </p>
  );
}

function Channels(props: {
  piece: Piece;
  channels: readonly Channel[];
  onChannels: (channels: readonly Channel[]) => void;
}) {
  const { piece, channels, onChannels } = props;
  const toggle = (channel: Channel) => {
    const next = piece.channels.filter((one) =>
      one === channel ? !channels.includes(one) : channels.includes(one),
    );
    // Something has to be left to tell it by.
    if (next.length > 0) onChannels(next);
  };
  return (
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
  );
}
