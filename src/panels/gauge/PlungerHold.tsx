import { type KeyboardEvent, useEffect, useMemo } from 'react';
import { useFact, useJob } from '../useJob.ts';
import { HoldWays } from './HoldWays.tsx';
import { createSteadyHand, ways } from './steadyHand.ts';

/** Holding the plunger without a pointer: buttons that are kept down and arrow keys, at a steady rate. */
export function PlungerHold() {
  const { session } = useJob();
  const isHeld = useFact((sim) => sim.hand.grasp !== null);
  const isShut = useFact(
    ({ assembly }) => assembly.parts.valve === 'fitted' || assembly.parts.holder === 'fitted',
  );
  const hand = useMemo(() => createSteadyHand(session), [session]);
  useEffect(() => hand.stop, [hand]);

  const toggle = () => {
    hand.stop();
    session.do(isHeld ? { do: 'letGo' } : { do: 'grasp', part: 'plunger' });
  };
  const onKey = (event: KeyboardEvent) => {
    const found = ways.find(({ key }) => key === event.key);
    if (found === undefined || !isHeld) return;
    event.preventDefault();
    if (!event.repeat) hand.press(found.way);
  };
  return (
    <fieldset className="hold" aria-label="Hold the plunger" onKeyDown={onKey} onKeyUp={hand.relax}>
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
          <HoldWays hand={hand} />
        </>
      ) : null}
    </fieldset>
  );
}
