import { type RefObject, useLayoutEffect, useState } from 'react';

/** Width of an element in CSS pixels, as it is now. */
export function useWidth(place: RefObject<HTMLElement | null>, first: number): number {
  const [width, setWidth] = useState(first);
  useLayoutEffect(() => {
    const element = place.current;
    if (element === null) return;
    const note = () => setWidth(Math.max(120, Math.round(element.clientWidth)));
    note();
    const watch = new ResizeObserver(note);
    watch.observe(element);
    return () => watch.disconnect();
  }, [place]);
  return width;
}
