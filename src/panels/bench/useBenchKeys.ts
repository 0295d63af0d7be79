import { type KeyboardEvent, useRef } from 'react';
import type { Session } from '../../session/session.ts';
import type { Effort } from '../../sim/set/commands.ts';

/** Single keys that work only while the bench itself has the focus. */
export const benchKeys: readonly { keys: string; what: string }[] = [
  { keys: 'D, kept down', what: 'Hold the decompressor; letting the key go lets it go' },
  { keys: '1 2 3 4', what: 'Strength of the next pull: gentle, half, firm, all you have' },
  { keys: 'P', what: 'Pull the cord' },
  { keys: '\u2192', what: 'Turn the flywheel a quarter turn' },
  { keys: 'C', what: 'Turn the flywheel up to compression' },
  { keys: 'L', what: 'Turn the flywheel until the cam’s low side faces the pump' },
  { keys: '\u2191 \u2193', what: 'Throttle faster, slower' },
  { keys: 'S', what: 'Stop lever to stop, or back to run' },
  { keys: 'G', what: 'Take hold of the loose plunger, or let it go' },
  { keys: 'Esc', what: 'Leave the bench for the list of acts' },
];

const efforts: Readonly<Record<string, Effort>> = { '1': 'weak', '2': 'half', '3': 'firm', '4': 'hard' };
const THROTTLE_STEP = 0.1;

/** Key handlers for the bench region. leave: where Escape goes. */
export function useBenchKeys(session: Session, leave: () => void) {
  const effort = useRef<Effort>('firm');
  const isHolding = useRef(false);

  const acts: Readonly<Record<string, () => void>> = {
    d: () => {
      isHolding.current = true;
      session.do({ do: 'holdDecompressor', held: true });
    },
    p: () => session.do({ do: 'pullCord', effort: effort.current, letGoAt: null }),
    arrowright: () => session.do({ do: 'turnFlywheel', to: 'quarterTurn' }),
    c: () => session.do({ do: 'turnFlywheel', to: 'compression' }),
    l: () => session.do({ do: 'turnFlywheel', to: 'lowSide' }),
    arrowup: () => moveThrottle(session, THROTTLE_STEP),
    arrowdown: () => moveThrottle(session, -THROTTLE_STEP),
    s: () =>
      session.do({ do: 'moveStopLever', to: session.sim().control.stopLever === 'run' ? 'stop' : 'run' }),
    g: () =>
      session.do(session.sim().hand.grasp === null ? { do: 'grasp', part: 'plunger' } : { do: 'letGo' }),
    escape: leave,
  };

  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    // Keys pressed inside a control on the bench belong to that control.
    if (event.target !== event.currentTarget || event.ctrlKey || event.altKey || event.metaKey) return;
    const chosen = efforts[event.key];
    const act = acts[event.key.toLowerCase()];
    if (chosen === undefined && act === undefined) return;
    event.preventDefault();
    if (event.repeat) return;
    if (chosen !== undefined) effort.current = chosen;
    act?.();
  };
  const letGo = () => {
    if (!isHolding.current) return;
    isHolding.current = false;
    session.do({ do: 'holdDecompressor', held: false });
  };
  const onKeyUp = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key.toLowerCase() === 'd') letGo();
  };
  // A key that is let go elsewhere is never heard of: leaving the bench lets the lever go too.
  return { onKeyDown, onKeyUp, onBlur: letGo };
}

function moveThrottle(session: Session, by: number): void {
  const to = Math.min(1, Math.max(0, Math.round((session.sim().control.throttle + by) * 20) / 20));
  session.do({ do: 'moveThrottle', to });
}
