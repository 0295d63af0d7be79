import type { CheckId } from './commands.ts';
import { lineOpening } from './lineState.ts';
import type { SimState } from './state.ts';

/** The pump must be off the engine, or on it. */
const onPump: Partial<Record<CheckId, 'loose' | 'fitted'>> = {
  pinFollows: 'fitted',
  stopLeverProof: 'fitted',
  cupEnd: 'loose',
  plungerTravel: 'loose',
  freeSlide: 'loose',
  shimCount: 'loose',
  camLift: 'loose',
  nozzleSpray: 'fitted',
};

/** What hides the thing that a check looks at, or null: the part or joint that is in the way. */
export function inTheWay(state: SimState, what: CheckId): string | null {
  const { parts } = state.assembly;
  const loose = state.pump.rest !== null;
  const needs = onPump[what];
  if (needs !== undefined && (needs === 'loose') !== loose) return 'pump';
  const fitted = (part: keyof typeof parts) => (parts[part] === 'fitted' ? part : null);
  const absent = (part: keyof typeof parts) => (parts[part] === 'fitted' ? null : part);
  switch (what) {
    case 'airElement':
      return fitted('airCover');
    case 'hoseFlow':
      return fitted('hose');
    case 'unionFuel':
      return lineOpening(state) === 'tight' ? 'pipeAtInjector' : null;
    case 'pinFollows':
      return fitted('windowCover');
    case 'pinTurn':
      return absent('plunger') ?? (loose ? null : fitted('windowCover'));
    case 'plungerTravel':
      return absent('plunger');
    case 'freeSlide':
      return absent('plunger') ?? fitted('returnSpring') ?? fitted('valve');
    case 'plungerFace':
      return fitted('plunger');
    case 'linkage':
      return fitted('windowCover');
    case 'nozzleSpray':
      return absent('pipe') ?? (lineOpening(state) === 'tight' ? null : 'pipeAtInjector');
    case 'valveSeat':
      return fitted('valve') === null ? null : 'holder';
    default:
      return null;
  }
}
