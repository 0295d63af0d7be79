import { useEffect, useRef, useState } from 'react';
import { useHead, usePlace, useReview } from './useReview.ts';
import { viewFor } from './viewFor.ts';

/** Whether the viewpoint goes where the work is, and the switch for it. */
export interface Follow {
  readonly isOn: boolean;
  set(isOn: boolean): void;
}

/** Fastest replay at which the viewpoint still follows; beyond it nobody could keep up. */
const FASTEST = 2;

/** Takes the viewpoint to each act that is shown, until the viewer chooses one of their own. */
export function useFollow(): Follow {
  const { replay, acts } = useReview();
  const { session } = replay;
  const place = usePlace();
  const isFast = useHead(({ isPlaying, speed }) => isPlaying && speed > FASTEST);
  const [isOn, setOn] = useState(true);
  const own = useRef(session.store.getState().view);
  useEffect(() => {
    if (!isOn || isFast) return;
    const { view, section } = viewFor(acts[place]?.command ?? null, session.sim());
    own.current = view;
    if (session.store.getState().view !== view) session.look({ view, section, apart: 0 });
  }, [isOn, isFast, acts, place, session]);
  useEffect(
    () =>
      session.store.subscribe(({ view }, before) => {
        if (view !== before.view && view !== own.current) setOn(false);
      }),
    [session],
  );
  return { isOn, set: setOn };
}
