import type { Act, Group, Thing } from './act.ts';
import { engineGroup } from './engine.ts';
import { fuelGroup } from './fuel.ts';
import { lineGroup } from './line.ts';
import { placeGroup } from './place.ts';
import { pumpLooseGroup } from './pumpLoose.ts';
import { pumpOnGroup } from './pumpOn.ts';

/** All that can be acted on, in groups, from the outside of the set inwards. */
export const groups: readonly Group[] = [
  placeGroup,
  engineGroup,
  fuelGroup,
  pumpOnGroup,
  pumpLooseGroup,
  lineGroup,
];

export interface Found {
  group: Group;
  thing: Thing;
}

/** The thing that a part of the picture belongs to, or null. */
export function thingFor(name: string): Found | null {
  for (const group of groups) {
    for (const thing of group.things) {
      if (thing.id === name || thing.aliases.includes(name)) return { group, thing };
    }
  }
  return null;
}

/** Every act once, with the group and thing under which it is listed first. */
export function allActs(): readonly (Found & { act: Act })[] {
  return groups.flatMap((group) =>
    group.things.flatMap((thing) => thing.acts.map((act) => ({ group, thing, act }))),
  );
}
