import type { Change } from '../../sim/set/changeKinds.ts';
import { changesOf, faultKinds } from '../faults.ts';

/** The hidden changes of a kind of fault by its name in faults.json, mild (0) to severe (1); throws RangeError on no such kind. */
export function changesOfKind(id: string, severity: number): Change[] {
  const kind = faultKinds().find((one) => one.id === id);
  if (kind === undefined) throw new RangeError(`no kind of fault ${id}`);
  return changesOf(kind, severity);
}
