import { loadingForce, unloadingForce } from '../../src/sim/laws/blockContact.ts';
import { slidingFriction, slipBond, staticHold } from '../../src/sim/laws/bond.ts';
import { type Plunger, type StrikeInput, springPush } from '../../src/sim/laws/strikeMotion.ts';
import { supportForce } from '../../src/sim/laws/supports.ts';
import { type Accuracy, integrateUntil, type Rates } from './odex.ts';

/*
 * A blow towards the outlet on the body of the pump as differential equations, cut wherever the block turns from
 * loading to unloading, lets go, or the plunger breaks loose or comes to rest. Stops and the working of the bond
 * are left out: the inputs have to be such that neither matters.
 */

/** What a blow came to, SI; after `seconds`. */
export interface Blown {
  readonly peakForce: number;
  readonly duration: number;
  readonly slip: number;
  readonly hammerSpeed: number;
  readonly bodySpeed: number;
  readonly evaluations: number;
}

type Contact = 'loading' | 'unloading' | 'apart';
interface Phase {
  contact: Contact;
  deepest: number;
  sliding: -1 | 0 | 1;
}

// hammer, its speed, body, its speed, plunger in the body, its slip: m and m/s
const SIZES = [1e-3, 1, 1e-3, 1, 1e-4, 0.1];

/** Force of the block, support and friction, and the accelerations that follow. */
function forces(input: StrikeInput, plunger: Plunger, phase: Phase, y: readonly number[]) {
  const [hammer = 0, , body = 0, bodySpeed = 0, moved = 0, slip = 0] = y;
  const x = hammer - body;
  const loaded = phase.contact === 'loading' ? loadingForce(input.block, x) : 0;
  const block = phase.contact === 'unloading' ? unloadingForce(input.block, x, phase.deepest) : loaded;
  const onBody = block - supportForce(input.support, body, bodySpeed);
  const spring = springPush(plunger.spring, plunger.travel + moved);
  const together = onBody / (input.bodyMass + plunger.mass);
  const load = -spring - plunger.mass * together;
  if (phase.sliding === 0) return { block, body: together, slip: 0, load };
  const bond = slipBond(plunger.bond, plunger.law);
  const rubbing = slidingFriction(bond, plunger.law, plunger.surface, plunger.extra, Math.abs(slip));
  const friction = -phase.sliding * rubbing;
  const ofBody = (onBody + spring - friction) / input.bodyMass;
  return { block, body: ofBody, slip: (friction - spring) / plunger.mass - ofBody, load };
}

function ratesOf(input: StrikeInput, plunger: Plunger, phase: Phase): Rates {
  return (_time, y) => {
    const f = forces(input, plunger, phase, y);
    return [y[1] ?? 0, -f.block / input.hammerMass, y[3] ?? 0, f.body, y[5] ?? 0, f.slip];
  };
}

/** Follows a blow for `seconds` (s). Needs a plunger, a blow towards the outlet on the body. */
export function blowInTime(input: StrikeInput, seconds: number, accuracy: Omit<Accuracy, 'sizes'>): Blown {
  const { plunger } = input;
  if (plunger === null || input.onto !== 'body' || input.struckEnd !== 'cam')
    throw new Error('not this blow');
  const hold = staticHold(plunger.bond, plunger.surface, plunger.extra);
  const phase: Phase = { contact: 'loading', deepest: 0, sliding: 0 };
  let y = [0, input.hammerSpeed, 0, 0, 0, 0];
  const told = { peakForce: 0, duration: 0, evaluations: 0 };
  for (let time = 0; time < seconds; ) {
    const next = (at: readonly number[]) => {
      const f = forces(input, plunger, phase, at);
      const closing = (at[1] ?? 0) - (at[3] ?? 0);
      const parts = { loading: -closing, unloading: -f.block, apart: -1 }[phase.contact];
      const loose = phase.sliding === 0 ? Math.abs(f.load) / hold - 1 : -(at[5] ?? 0) * phase.sliding;
      return loose > parts ? { at: loose, what: 'plunger' } : { at: parts, what: 'block' };
    };
    const part = integrateUntil(
      ratesOf(input, plunger, phase),
      time,
      y,
      seconds,
      { ...accuracy, sizes: SIZES },
      (_t, at) => next(at).at,
    );
    told.evaluations += part.evaluations;
    y = part.y;
    time = part.x;
    if (!part.reached) break;
    if (next(y).what === 'plunger') {
      const { load } = forces(input, plunger, phase, y);
      phase.sliding = phase.sliding === 0 ? (load > 0 ? 1 : -1) : 0;
      if (phase.sliding === 0) y = [...y.slice(0, 5), 0];
    } else if (phase.contact === 'loading') {
      phase.deepest = (y[0] ?? 0) - (y[2] ?? 0);
      told.peakForce = loadingForce(input.block, phase.deepest);
      phase.contact = 'unloading';
    } else {
      phase.contact = 'apart';
      told.duration = time;
    }
  }
  const [, hammerSpeed = 0, , bodySpeed = 0, slip = 0] = y;
  return { ...told, slip, hammerSpeed, bodySpeed };
}
