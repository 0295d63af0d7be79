import { useEffect, useRef } from 'react';
import { encode } from 'uqr';
import type { SentWork } from './WorksTable.tsx';

/** Characters of a link that a camera still reads off a projector. */
const LONGEST_CODE = 800;
const QUIET = 4;

/** The link as a QR code (ISO/IEC 18004), large enough for a projector. */
export function QrDialog({ work, onClose }: { work: SentWork; onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const { data, size } = encode(work.address, { ecc: 'L', border: QUIET });
  const path = data
    .flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])))
    .join('');
  return (
    <dialog ref={dialog} className="desk-qr" aria-labelledby="qr-title" onClose={onClose}>
      <h2 id="qr-title">
        {work.work.name}: {work.who}
      </h2>
      <svg
        viewBox={`0 0 ${size} ${size}`}
        role="img"
        aria-label="QR code of the link"
        shapeRendering="crispEdges"
      >
        <rect width={size} height={size} fill="#fff" />
        <path d={path} fill="#000" />
      </svg>
      {work.address.length > LONGEST_CODE ? (
        <p>
          The code is fine because the link is long: hold the camera close, or pass the link on another way.
        </p>
      ) : null}
      <form method="dialog">
        <button type="submit" className="button strong">
          Close
        </button>
      </form>
    </dialog>
  );
}
