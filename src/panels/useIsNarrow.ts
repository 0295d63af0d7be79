import { useEffect, useState } from 'react';

const NARROW = '(max-width: 920px)';

/** Whether the page is laid out for a small screen. */
export function useIsNarrow(): boolean {
  const [isNarrow, setNarrow] = useState(() => window.matchMedia(NARROW).matches);
  useEffect(() => {
    const query = window.matchMedia(NARROW);
    const note = () => setNarrow(query.matches);
    query.addEventListener('change', note);
    return () => query.removeEventListener('change', note);
  }, []);
  return isNarrow;
}
