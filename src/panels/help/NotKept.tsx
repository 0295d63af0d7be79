import { useEffect, useState } from 'react';

/** Says once that this browser does not keep what is done, and why; the job goes on. */
export function NotKept({ notKept }: { notKept: Promise<string | null> }) {
  const [why, setWhy] = useState<string | null>(null);
  useEffect(() => {
    let isShown = true;
    notKept.then((reason) => {
      if (isShown) setWhy(reason);
    });
    return () => {
      isShown = false;
    };
  }, [notKept]);
  if (why === null) return null;
  return (
    <div className="not-kept" role="status">
      <p>
        This browser does not keep your work ({why.replace(/[.\s]+$/, '')}). You can finish the job, but a
        closed page loses it.
      </p>
      <button type="button" className="button" onClick={() => setWhy(null)}>
        Understood
      </button>
    </div>
  );
}
