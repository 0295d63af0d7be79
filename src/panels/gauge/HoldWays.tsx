import type { SteadyHand, Way } from './steadyHand.ts';
import { ways } from './steadyHand.ts';

/** Four buttons that a hand is kept on: push, pull, and twist either way. */
export function HoldWays({ hand }: { hand: SteadyHand }) {
  return (
    <div className="hold-ways">
      {ways.map(({ way, name, mark }) => (
        <HoldButton key={way} name={name} mark={mark} way={way} hand={hand} />
      ))}
    </div>
  );
}

function HoldButton(props: { name: string; mark: string; way: Way; hand: SteadyHand }) {
  const { name, mark, way, hand } = props;
  return (
    <button
      type="button"
      className="button"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        hand.press(way);
      }}
      onPointerUp={hand.relax}
      onPointerCancel={hand.relax}
      onLostPointerCapture={hand.relax}
      onKeyDown={(event) => {
        if ((event.key === 'Enter' || event.key === ' ') && !event.repeat) {
          event.preventDefault();
          hand.press(way);
        }
      }}
      onKeyUp={(event) => {
        if (event.key === 'Enter' || event.key === ' ') hand.relax();
      }}
      onBlur={hand.relax}
      onContextMenu={(event) => event.preventDefault()}
    >
      <span aria-hidden="true">{mark}</span> {name}
    </button>
  );
}
