import { useEffect, useState, useSyncExternalStore } from 'react';
import type { Session } from '../session/session.ts';
import type { Held } from './handles/held.ts';

/** Share of the rope that is out when a hand lets the decompressor go: assumed. */
const LET_GO_AT = 0.6;
const twoSpanners: readonly string[] = ['spanner', 'torqueWrench'];

/** What the other hand could do with what is in hand or selected; null where one hand does it all. */
export function otherHandFor(session: Session): string | null {
  const { inHand, selected } = session.store.getState();
  if (twoSpanners.includes(inHand)) return 'Second spanner on the body';
  const { retainer } = session.sim().assembly.parts;
  return inHand === 'hand' && selected === 'retainer' && retainer === 'fitted' ? 'Hold the cup' : null;
}

/** Whether the holder is on its thread and loose, with what tightens it in the hand: the washer's time. */
export function washerFor(session: Session): string | null {
  const { parts, joints } = session.sim().assembly;
  const isLoose = parts.holder === 'fitted' && joints.holder.at !== 'tight';
  return isLoose && twoSpanners.includes(session.store.getState().inHand) ? 'New sealing washer' : null;
}

/** Whether the next pull of the cord would let a held decompressor go on the way; null while it is not held. */
export function letGoFor(session: Session): boolean | null {
  const { letGoAt } = session.store.getState();
  return session.sim().control.decompressorHeld ? letGoAt !== null : null;
}

/** What goes with the act that the hand does, pressed before it: the other hand, for those who have no shift key; a washer. */
export function OtherHand({ session, held }: { session: Session; held: Held }) {
  const hand = useSyncExternalStore(session.store.subscribe, () => otherHandFor(session));
  const washer = useSyncExternalStore(session.store.subscribe, () => washerFor(session));
  const letGo = useSyncExternalStore(session.store.subscribe, () => letGoFor(session));
  return (
    <div className="scene-others">
      {letGo === null ? null : (
        <button
          type="button"
          className="scene-other"
          aria-pressed={letGo}
          onClick={() => session.look({ letGoAt: letGo ? null : LET_GO_AT })}
        >
          Let the decompressor go as it spins
        </button>
      )}
      {hand === null ? null : <WithButton key={hand} label={hand} held={held} what="other" />}
      {washer === null ? null : <WithButton key={washer} label={washer} held={held} what="newWasher" />}
    </div>
  );
}

/** A button that stays down for the acts that follow, until it is pressed again or has no meaning any more. */
function WithButton({ label, held, what }: { label: string; held: Held; what: 'other' | 'newWasher' }) {
  const [on, setOn] = useState(false);
  useEffect(() => {
    held[what] = on;
    return () => {
      held[what] = false;
    };
  }, [on, held, what]);
  return (
    <button type="button" className="scene-other" aria-pressed={on} onClick={() => setOn(!on)}>
      {label}
    </button>
  );
}
