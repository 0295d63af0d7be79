import { type RefObject, useEffect, useRef, useState } from 'react';

/** Whether an element has yet come near the part of the page that is seen; once true it stays true. */
export function useNear<Kind extends Element>(): [RefObject<Kind | null>, boolean] {
  const ref = useRef<Kind>(null);
  const [isNear, setIsNear] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const watch = new IntersectionObserver(
      (entries) => {
        if (!entries.some((entry) => entry.isIntersecting)) return;
        setIsNear(true);
        watch.disconnect();
      },
      { rootMargin: '400px' },
    );
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return [ref, isNear];
}
