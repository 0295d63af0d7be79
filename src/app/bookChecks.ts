import * as v from 'valibot';
import checksText from '../../models/bench-set/checks.json?raw';
import type { LawCheck } from '../sim/laws/check.ts';

const file = v.strictObject({
  checks: v.array(
    v.strictObject({
      id: v.string(),
      law: v.string(),
      inputs: v.record(v.string(), v.number()),
      expected: v.record(v.string(), v.number()),
      tolerance: v.union([
        v.strictObject({ relative: v.number() }),
        v.strictObject({ absolute: v.number() }),
      ]),
      kind: v.picklist(['verified', 'from memory', 'common practice', 'derived']),
      work: v.string(),
      source: v.string(),
    }),
  ),
});

/** The checks that come with the set; throws when the file has not the shape of a list of checks. */
export const readChecks = (): readonly LawCheck[] => v.parse(file, JSON.parse(checksText)).checks;
