import type { ForceTry } from '../../session/forces.ts';
import { countOf } from '../format.ts';

const wayNames = { cam: 'towards the cam', outlet: 'towards the outlet' } as const;
const tryNames = { blow: 'Blow', push: 'Push', pin: 'Pin' } as const;

/** What a blow or push was, in words. */
export const tryText = ({ by, towards }: ForceTry): string =>
  towards === null ? 'Push on the pin' : `${tryNames[by]} ${wayNames[towards]}`;

/** What the forces say as a whole. */
export function summaryText(tries: readonly ForceTry[]): string {
  const blows = tries.filter(({ by }) => by === 'blow');
  const vain = blows.filter(({ load, needed }) => needed !== null && load < 0.2 * needed);
  const harmful = tries.filter(({ peak, harms }) => harms !== null && peak > harms);
  const parts = [
    'A blow reaches the plunger only through its own weight: what bears on the bond is a part of the hammer’s force.',
  ];
  if (vain.length > 0 && vain.length >= blows.length / 2)
    parts.push(
      `${countOf(vain.length, 'blow', 'blows')} loaded the bond hardly at all: the wrong end, or too light.`,
    );
  if (harmful.length > 0)
    parts.push(
      `${countOf(harmful.length, 'was', 'were')} over what harms the part that was struck or pushed.`,
    );
  return parts.join(' ');
}
