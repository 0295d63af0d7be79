import type { Rule } from './rule.ts';
import { bleedingRules } from './rules/bleeding.ts';
import { findingTheCauseRules } from './rules/findingTheCause.ts';
import { openingUpRules } from './rules/openingUp.ts';
import { precisionPartsRules } from './rules/precisionParts.ts';
import { refitRules } from './rules/refit.ts';
import { resultRules } from './rules/result.ts';
import { safeWorkingRules } from './rules/safeWorking.ts';

/** The whole marking table, part by part. */
export const rules: readonly Rule[] = [
  ...findingTheCauseRules,
  ...safeWorkingRules,
  ...openingUpRules,
  ...precisionPartsRules,
  ...refitRules,
  ...bleedingRules,
  ...resultRules,
];
