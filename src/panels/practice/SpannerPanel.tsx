import type { PullRate, SpannerHand } from './useSpanner.ts';

const ways: readonly { rate: PullRate; name: string }[] = [
  { rate: 'firm', name: 'Pull' },
  { rate: 'easy', name: 'Pull slowly' },
];

/** Two buttons that the spanner is pulled with for as long as they are kept down, and the second spanner. */
export function SpannerPanel(props: {
  hand: SpannerHand;
  needsBackup: boolean;
  backup: boolean;
  onBackup: (held: boolean) => void;
}) {
  const { hand, needsBackup, backup, onBackup } = props;
  return (
    <div className="spanner-ways">
      <div className="hold-ways two">
        {ways.map(({ rate, name }) => (
          <button
            key={rate}
            type="button"
            className="button"
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId);
              hand.press(rate);
            }}
            onPointerUp={hand.letGo}
            onPointerCancel={hand.letGo}
            onLostPointerCapture={hand.letGo}
            onKeyDown={(event) => {
              if ((event.key === 'Enter' || event.key === ' ') && !event.repeat) {
                event.preventDefault();
                hand.press(rate);
              }
            }}
            onKeyUp={(event) => {
              if (event.key === 'Enter' || event.key === ' ') hand.letGo();
            }}
            onBlur={hand.letGo}
            onContextMenu={(event) => event.preventDefault()}
          >
            {name}
          </button>
        ))}
      </div>
      <p className="hold-help">
        Keep one down; the pull grows until you let go. Or drag the spanner’s end. Another pull goes on from
        there.
      </p>
      {needsBackup ? (
        <label className="tick">
          <input type="checkbox" checked={backup} onChange={(event) => onBackup(event.target.checked)} />
          <span>Second spanner on what it screws onto</span>
        </label>
      ) : null}
    </div>
  );
}
