/** What can be written on the card for the owner; the last three are bad advice that people do give. */
export const adviceIds = [
  'freshFuel',
  'runMonthly',
  'stopByLever',
  'neverRunDry',
  'runDryForStorage',
  'stopByTap',
  'hitItNextTime',
] as const;
export type AdviceId = (typeof adviceIds)[number];

/** Advice that keeps a pump from sticking again (common practice, no source). */
export const soundAdvice: readonly AdviceId[] = ['freshFuel', 'runMonthly', 'stopByLever', 'neverRunDry'];
