import { useRef } from 'react';
import { useFact, useJob } from '../useJob.ts';
import { Bubbles, showBubbles } from './Bubbles.tsx';
import { airShares, fuelFill } from './fuel.ts';
import { bar, type Corner, outline, type Ruler, rulerOf } from './layout.ts';
import { useLive } from './useLive.ts';

/** The needle's lift is drawn so many times as large: to scale it could not be seen. */
const SHOWN = 4;
const TOP = 17;
const GALLERY = [7, 12.5] as const;

/** The nozzle's tip in section: needle on its seat or up, the fuel round it, the spray. Heights mm from the seat. */
export function NozzleInset() {
  const { session, core } = useJob();
  const def = session.definition;
  const mm = rulerOf(def);
  const fuel = useRef<SVGPathElement>(null);
  const needle = useRef<SVGPathElement>(null);
  const spray = useRef<SVGPathElement>(null);
  const bubbles = useRef<SVGGElement>(null);
  const words = useRef<HTMLSpanElement>(null);
  const isClosed = useFact(({ assembly }) => assembly.parts.pipe === 'fitted');

  useLive(() => {
    const sim = session.shown();
    const { needleLift } = core.pumpPose(def, sim);
    const isUp = needleLift > 0;
    needle.current?.setAttribute('transform', `translate(0 ${(-needleLift * 1000 * SHOWN).toFixed(2)})`);
    fuel.current?.setAttribute('fill', fuelFill(sim.line.pressure));
    spray.current?.setAttribute('visibility', isUp ? 'visible' : 'hidden');
    showBubbles(bubbles.current, airShares(def, sim)[1]);
    if (words.current !== null) words.current.textContent = isUp ? 'up' : 'on its seat';
  });

  return (
    <div className="inset">
      <svg viewBox="-12 -18 24 23" role="img" aria-label="Nozzle in section">
        <path ref={fuel} className="fuel" d={fuelSpace(mm)} fill="url(#fuel-low)" />
        <path className="cut holder" d={bodyFaces(mm)} />
        <Bubbles
          group={bubbles}
          radius={0.7}
          at={[
            [3.6, 11.4],
            [-3.6, 10.4],
            [3.8, 9.2],
            [-3.9, 8.2],
            [-3.4, 11.9],
            [3.2, 7.9],
          ]}
        />
        <path ref={needle} className="part" d={needleOutline(mm)} />
        <path ref={spray} className="spray" d={sprayLines(mm)} visibility="hidden" />
      </svg>
      <p>
        Needle <span ref={words} />
        {isClosed ? '' : ' (the pipe is off)'}
      </p>
    </div>
  );
}

const cone = (mm: Ruler): number => Math.tan((mm('nozzle', 'seatAngle') / 1000) * 0.5);

/** Both halves of the body: guide above, gallery, the bore down to the seat, the sac. */
function bodyFaces(mm: Ruler): string {
  const { bore, guide, gallery, sac } = radii(mm);
  const [low, high] = GALLERY;
  const foot = (bore - sac) / cone(mm);
  const outer = mm('nozzle', 'bodyRadius');
  const corners: Corner[] = [
    [guide, TOP],
    [outer, TOP],
    [outer, 6],
    [bore + 2.2, 3.2],
    [bore + 1.4, 0],
    [sac + 1.1, -mm('nozzle', 'sacHeight') - 1],
    [0, -mm('nozzle', 'sacHeight') - 1.2],
    [0, -mm('nozzle', 'sacHeight')],
    [sac, -mm('nozzle', 'sacHeight') + 0.4],
    [sac, 0],
    [bore, foot],
    [bore, low],
    [gallery, low + 1],
    [gallery, high - 1],
    [guide, high],
  ];
  return outline(corners) + outline(corners, -1);
}

/** Where the fuel stands: gallery, bore, seat and sac; the needle is drawn over it. */
function fuelSpace(mm: Ruler): string {
  const { bore, guide, gallery, sac } = radii(mm);
  const [low, high] = GALLERY;
  const half: Corner[] = [
    [0, high],
    [guide, high],
    [gallery, high - 1],
    [gallery, low + 1],
    [bore, low],
    [bore, (bore - sac) / cone(mm)],
    [sac, 0],
    [sac, -mm('nozzle', 'sacHeight')],
    [0, -mm('nozzle', 'sacHeight')],
  ];
  return outline(half) + outline(half, -1);
}

function radii(mm: Ruler) {
  const guide = mm('nozzle', 'needleRadius');
  return { guide, bore: guide - 0.5, gallery: guide + 1.7, sac: mm('nozzle', 'sacRadius') };
}

/** The needle on its seat: guided above, slimmer below, its cone touching the seat's. */
function needleOutline(mm: Ruler): string {
  const { guide, sac } = radii(mm);
  const seat = mm('nozzle', 'seatRadius');
  const stem = seat + 0.3;
  const meets = (seat - sac) / cone(mm);
  return (
    bar(guide, GALLERY[1] - 0.5, TOP) +
    outline([
      [-stem, GALLERY[1] - 0.5],
      [-stem, meets + 0.3 / cone(mm)],
      [0, meets - seat / cone(mm)],
      [stem, meets + 0.3 / cone(mm)],
      [stem, GALLERY[1] - 0.5],
    ])
  );
}

/** Jets from the holes at both sides. */
function sprayLines(mm: Ruler): string {
  const tilt = mm('nozzle', 'holeTilt') / 1000;
  const from = mm('nozzle', 'sacHeight') - 0.6;
  const jet = (side: 1 | -1, spread: number, reach: number): string => {
    const angle = tilt + spread;
    const near = 2.1;
    const at = (r: number) =>
      `${(side * r * Math.sin(angle)).toFixed(2)} ${(from + r * Math.cos(angle)).toFixed(2)}`;
    return `M${at(near)}L${at(reach)}`;
  };
  return ([1, -1] as const)
    .map((side) => jet(side, 0, 11) + jet(side, 0.09, 9.6) + jet(side, -0.09, 9.6))
    .join('');
}
