import { type RefObject, useEffect, useState } from 'react';

/**
 * Whether the browser has taken the picture's memory away (a sleeping machine, a crashed driver), under `place`.
 *
 * Nothing of the job is in that memory; the picture is drawn again as soon as it is given back.
 */
export function usePictureLost(place: RefObject<HTMLElement | null>): boolean {
  const [lost, setLost] = useState(false);
  useEffect(() => {
    const scene = place.current;
    if (scene === null) return;
    const gone = (): void => setLost(true);
    const back = (): void => setLost(false);
    // These events do not rise from the canvas: they are met on their way down.
    scene.addEventListener('webglcontextlost', gone, true);
    scene.addEventListener('webglcontextrestored', back, true);
    return () => {
      scene.removeEventListener('webglcontextlost', gone, true);
      scene.removeEventListener('webglcontextrestored', back, true);
    };
  }, [place]);
  return lost;
}
