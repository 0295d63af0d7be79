import type { SimEvent } from './events.ts';
import type { HurtKind, SimState } from './state.ts';

/** Records damage to a part and tells it, the first time that it is done; the same again only makes it worse. */
export function damage(state: SimState, part: string, what: string, events: SimEvent[]): void {
  if (state.damage.some((d) => d.part === part && d.what === what)) return;
  state.damage.push({ part, what, at: state.step });
  events.push({ kind: 'damaged', part, what });
}

/** Records an injury and tells it. */
export function hurt(state: SimState, what: HurtKind, events: SimEvent[]): void {
  state.hurt.push({ what, at: state.step });
  events.push({ kind: 'hurt', what });
}
