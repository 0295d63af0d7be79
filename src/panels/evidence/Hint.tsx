import type { HintLevel } from '../../jobs/hints.ts';
import type { EvidenceDesk } from '../core.ts';
import { countOf } from '../format.ts';
import { HintLevels } from '../guide/HintLevels.tsx';
import { useJob } from '../useJob.ts';
import { useShare, Working } from './Working.tsx';
import './evidence.css';

/**
 * A hint on what to check next. By the trade's order at once, and worked out exactly as soon as every fault has been run
 * through every check.
 */
export function Hint() {
  const { core } = useJob();
  return core.evidence === undefined ? <CheckHint /> : <CheckHintAtDesk desk={core.evidence} />;
}

function CheckHintAtDesk({ desk }: { desk: EvidenceDesk }) {
  const { session } = useJob();
  const share = useShare(desk);
  return (
    <>
      <CheckHint onAsk={() => desk.begin(session.definition)} />
      {share === null || share >= 1 || session.terms.hints === 0 ? null : <Working share={share} />}
    </>
  );
}

function CheckHint({ onAsk }: { onAsk?: () => void }) {
  return (
    <HintLevels
      about="nextCheck"
      name="What to check next"
      text={(level) => <CheckText level={level} />}
      {...(onAsk && { onAsk })}
    />
  );
}

/** One level: where to look, what a check there is worth, which check it is. */
function CheckText({ level }: { level: HintLevel }) {
  const { session, core } = useJob();
  const { open, next, isExact } = core.outlook(session);
  const left = countOf(open.length, 'cause', 'causes');
  if (next === null) {
    if (level === 1) return 'No check tells more than you know. Decide.';
    return level === 2
      ? `Your findings leave ${left} open.`
      : 'Strike out what they exclude, name what is left.';
  }
  if (level === 1) return `Look to: ${core.causeGroupText(next.area).toLowerCase()}.`;
  const { minutes } = next;
  if (level === 2) {
    const here = core.inArea(open, next.area);
    const where = `Your findings leave ${left} open, ${here === 0 ? 'none' : here} of them there.`;
    const worth = isExact ? 'A check there tells most for its time' : 'By the trade’s order that comes next';
    return `${where} ${worth}${minutes === null ? '' : `: about ${minutesText(minutes)}`}.`;
  }
  return `${isExact ? 'Worth most for its time now' : 'Next by the trade’s order'}: ${next.name}.`;
}

const minutesText = (minutes: number): string =>
  minutes < 1.5 ? 'a minute' : `${Math.round(minutes)} minutes${minutes > 4 ? ' with putting back' : ''}`;
