import type { KeptJob } from '../session/keep.ts';

/** Work that cannot be gone on with: why, and how to save what was recorded of it. */
export function RefusedWork({
  refused,
  kept,
  onLeave,
}: {
  refused: string;
  kept: KeptJob | null;
  onLeave: () => void;
}) {
  return (
    <main className="opening">
      <h1>This work cannot be gone on with</h1>
      <p>{refused}</p>
      {kept === null ? null : (
        <p>
          <a
            download={`${kept.head.scenarioId}-${kept.head.begun}.json`}
            href={`data:application/json,${encodeURIComponent(JSON.stringify(kept))}`}
          >
            Save what was recorded as a file
          </a>
        </p>
      )}
      <p>
        <button type="button" className="button" onClick={onLeave}>
          Back to the first screen
        </button>
      </p>
    </main>
  );
}
