import { type KeyboardEvent, useEffect, useRef } from 'react';
import { useFact, useJob } from '../useJob.ts';

type Way = 'cam' | 'outlet' | 'twistBack' | 'twistOn';

const ways: readonly { way: Way; name: string; key: string; mark: string }[] = [
  { way: 'outlet', name: 'Push to outlet', key: 'ArrowUp', mark: '\u2191' },
  { way: 'cam', name: 'Pull to cam', key: 'ArrowDown', mark: '\u2193' },
  { way: 'twistBack', name: 'Twist to no fuel', key: 'ArrowLeft', mark: '\u2190' },
  { way: 'twistOn', name: 'Twist to full', key: 'ArrowRight', mark: '\u2192' },
];

/** How fast the hand goes while a button is held: m/s along, N.m/s round. */
const RATE = 0.003;
const TWIST_RATE = 0.2;
/** Time between two samples of the hand, ms. */
const PAUSE = 50;

const limit = (value: number, most: number) => Math.max(-most, Math.min(most, value));

/** Holding the plunger without a pointer: buttons that are kept down and arrow keys, at a steady rate. */
export function PlungerHold() {
  const { session } = useJob();
  const isHeld = useFact((sim) => sim.hand.grasp !== null);
  const isShut = useFact(
    ({ assembly }) => assembly.parts.valve === 'fitted' || assembly.parts.holder === 'fitted',
  );
  const hand = useHand();

  const toggle = () => session.do(isHeld ? { do: 'letGo' } : { do: 'grasp', part: 'plunger' });
  const onKey = (event: KeyboardEvent) => {
    const found = ways.find(({ key }) => key === event.key);
    if (found === undefined || !isHeld) return;
    event.preventDefault();
    if (!event.repeat) hand.press(found.way);
  };
  return (
    <fieldset className="hold" aria-label="Hold the plunger" onKeyDown={onKey} onKeyUp={hand.release}>
      <button type="button" className="button strong" aria-pressed={isHeld} onClick={toggle}>
        {isHeld ? 'Let go of the plunger' : 'Take hold of the plunger'}
      </button>
      {isHeld ? (
        <>
          <p className="hold-help">
            Keep a button down, or an arrow key. The hand goes on steadily until you lift.
          </p>
          {isShut ? (
            <p className="hold-help">With the delivery valve in, a hand gets at it from the cam end only.</p>
          ) : null}
          <div className="hold-ways">
            {ways.map(({ way, name, mark }) => (
              <HoldButton
                key={way}
                name={name}
                mark={mark}
                onPress={() => hand.press(way)}
                onRelease={hand.release}
              />
            ))}
          </div>
        </>
      ) : null}
    </fieldset>
  );
}

function HoldButton(props: { name: string; mark: string; onPress: () => void; onRelease: () => void }) {
  const { name, mark, onPress, onRelease } = props;
  return (
    <button
      type="button"
      className="button"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        onPress();
      }}
      onPointerUp={onRelease}
      onPointerCancel={onRelease}
      onLostPointerCapture={onRelease}
      onKeyDown={(event) => {
        if ((event.key === 'Enter' || event.key === ' ') && !event.repeat) {
          event.preventDefault();
          onPress();
        }
      }}
      onBlur={onRelease}
      onContextMenu={(event) => event.preventDefault()}
    >
      <span aria-hidden="true">{mark}</span> {name}
    </button>
  );
}

/** A hand that goes one way at a steady rate for as long as something is pressed. */
function useHand(): { press: (way: Way) => void; release: () => void } {
  const { session } = useJob();
  const timer = useRef<ReturnType<typeof setInterval> | null>(null);
  const at = useRef({ travel: 0, twist: 0 });

  const release = () => {
    if (timer.current === null) return;
    clearInterval(timer.current);
    timer.current = null;
    // A hand that stops pressing relaxes to where the plunger is.
    if (session.sim().hand.grasp === null) return;
    at.current = { travel: session.sim().pump.travel, twist: 0 };
    session.do({ do: 'handTo', ...at.current });
  };
  const move = (way: Way) => {
    const { hand, pump } = session.definition;
    const { travel } = session.sim().pump;
    const seconds = PAUSE / 1000;
    const along = way === 'cam' ? -1 : way === 'outlet' ? 1 : 0;
    const round = way === 'twistBack' ? -1 : way === 'twistOn' ? 1 : 0;
    // The hand cannot get further ahead of the plunger than its strength allows.
    const lead = limit(at.current.travel + along * RATE * seconds - travel, hand.push / hand.coupling);
    at.current = {
      travel: limit(travel + lead, 2 * pump.topStop),
      twist: limit(at.current.twist + round * TWIST_RATE * seconds, hand.fingerTwist),
    };
    session.do({ do: 'handTo', ...at.current });
  };
  const press = (way: Way) => {
    if (timer.current !== null) clearInterval(timer.current);
    at.current = { travel: session.sim().pump.travel, twist: 0 };
    move(way);
    timer.current = setInterval(() => move(way), PAUSE);
  };
  useEffect(
    () => () => {
      if (timer.current !== null) clearInterval(timer.current);
    },
    [],
  );
  return { press, release };
}
