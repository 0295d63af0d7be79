import { adviceIds } from '../jobs/advice.ts';
import { cautionsFor, cautionWords, disclaimer } from '../jobs/cautions.ts';
import { findingText } from '../jobs/findingWords.ts';
import { hintCosts, hintedSoFar } from '../jobs/hints.ts';
import { stageNow } from '../jobs/stages.ts';
import { toolsFor } from '../jobs/tools.ts';
import { areaOf, byTradeOrder, inArea } from '../jobs/tradeOrder.ts';
import { adviceText, causeGroupText, causeText } from '../jobs/words.ts';
import { criteriaSheet } from '../marking/criteria.ts';
import { partNames, partTitles, partWeights } from '../marking/rule.ts';
import { stopRules } from '../marking/stopWork.ts';
import type { Core } from '../panels/core.ts';
import { pumpPose } from '../sim/set/kinematics.ts';
import { slowStroke } from '../sim/set/slowStroke.ts';
import { stateAt, strokeAt, strokeMarks } from '../sim/set/strokeMarks.ts';
import { evidenceDesk } from './evidenceDesk.ts';

const outlook: Core['outlook'] = (session) => {
  const { scenario } = session;
  const { card } = session.job();
  const reading = evidenceDesk.read(scenario, card);
  if (reading === null) return { ...byTradeOrder(card, scenario.causes), isExact: false };
  const { left, next } = reading;
  return {
    open: left.map(({ cause }) => cause),
    next: next === null ? null : { ...next, area: areaOf(next.id) },
    isExact: true,
  };
};

/** What the panels are handed from beneath the session. */
export const core: Core = {
  findingText,
  causeText,
  causeGroupText,
  adviceText,
  adviceIds,
  cautionsFor,
  cautionWords,
  toolsFor,
  disclaimer,
  stageNow,
  outlook,
  inArea,
  hintedSoFar,
  hintCosts,
  partTitles,
  parts: partNames,
  criteria: criteriaSheet,
  partWeights,
  stopReason: (rule) => stopRules.find(({ id }) => id === rule)?.reason ?? rule,
  pumpPose,
  evidence: evidenceDesk,
  strokes: { look: slowStroke, marks: strokeMarks, at: strokeAt, state: stateAt },
};
