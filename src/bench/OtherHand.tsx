import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Session } from '../session/session.ts';
import type { Held } from './handles/held.ts';

const twoSpanners: readonly string[] = ['spanner', 'torqueWrench'];

/** What the other hand could do with what is in hand or selected; null where one hand does it all. */
export function otherHandFor(session: Session): string | null {
  const { inHand, selected } = session.store.getState();
  if (twoSpanners.includes(inHand)) return 'Second spanner on the body';
  const { retainer } = session.sim().assembly.parts;
  return inHand === 'hand' && selected === 'retainer' && retainer === 'fitted' ? 'Hold the cup' : null;
}

/** The other hand for those who have no shift key: pressed, it helps with every act until it is let go. */
export function OtherHand({ session, held }: { session: Session; held: Held }) {
  const label = useSyncExternalStore(session.store.subscribe, () => otherHandFor(session));
  return label === null ? null : <OtherHandButton key={label} label={label} held={held} />;
}

function OtherHandButton({ label, held }: { label: string; held: Held }) {
  const [on, setOn] = useState(false);
  useEffect(() => {
    held.other = on;
    return () => {
      held.other = false;
    };
  }, [on, held]);
  return (
    <button type="button" className="scene-other" aria-pressed={on} onClick={() => setOn(!on)}>
      {label}
    </button>
  );
}
