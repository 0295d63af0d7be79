import { describe, expect, it } from 'vitest';
import { blankCard, type Finding, type JobCard, writeOnCard } from '../../src/jobs/card.ts';
import { type CauseId, causeIds } from '../../src/jobs/causes.ts';
import { evidence, findingsAsReceived, pointsAt, ruledOut } from '../../src/jobs/evidence.ts';
import type { FindingCode } from '../../src/jobs/findings.ts';

const finding = (code: FindingCode): Finding => ({ id: `${code}#1`, code, values: {}, at: 5, check: 'pull' });
const cardWith = (...codes: FindingCode[]): JobCard => ({ ...blankCard(), findings: codes.map(finding) });
const offered: CauseId[] = ['plungerStuckUp', 'airInLine', 'wornPair'];

describe('the job card', () => {
  it('strikes out, restores, and refuses to do either twice', () => {
    const card = blankCard();
    expect(writeOnCard(card, { do: 'strikeOut', cause: 'wornPair' }, offered)).toEqual([
      { kind: 'causeStruck', cause: 'wornPair' },
    ]);
    expect(writeOnCard(card, { do: 'strikeOut', cause: 'wornPair' }, offered)[0]).toMatchObject({
      code: 'alreadyStruck',
    });
    writeOnCard(card, { do: 'restore', cause: 'wornPair' }, offered);
    expect(card.struck).toEqual([]);
    expect(writeOnCard(card, { do: 'restore', cause: 'wornPair' }, offered)[0]).toMatchObject({
      code: 'notStruck',
    });
  });

  it('takes a name only with a finding that stands on it, and only for a cause still open', () => {
    const card = cardWith('pinStays');
    const name = (because: string) =>
      writeOnCard(card, { do: 'nameCause', cause: 'plungerStuckUp', because }, offered)[0];
    expect(name('cupRecessed#1')).toMatchObject({ code: 'noSuchFinding', by: 'cupRecessed#1' });
    expect(name('pinStays#1')).toMatchObject({ kind: 'causeNamed' });
    expect(card.named).toEqual({ cause: 'plungerStuckUp', because: 'pinStays#1' });
    writeOnCard(card, { do: 'strikeOut', cause: 'plungerStuckUp' }, offered);
    expect(card.named).toBeNull();
    expect(name('pinStays#1')).toMatchObject({ code: 'isStruck' });
  });

  it('refuses a cause that the job does not offer, and writes nothing', () => {
    const card = cardWith('pinStays');
    const events = writeOnCard(
      card,
      { do: 'nameCause', cause: 'nozzleCoked', because: 'pinStays#1' },
      offered,
    );
    expect(events).toEqual([
      { kind: 'cardRefused', act: 'nameCause', code: 'notOffered', by: 'nozzleCoked' },
    ]);
    expect(card.named).toBeNull();
  });
});

describe('the evidence table', () => {
  // the trade's reasoning: common practice, no source
  it('lets a dry union, a pin that stays, a recessed cup and a plunger that does not give leave a plunger stuck up', () => {
    const card = cardWith(
      'compressionFelt',
      'airClear',
      'bowlClean',
      'hoseFlows',
      'noFuelAtUnion',
      'pinStays',
      'stopLeverAtRun',
      'cupRecessed',
      'holderAtTorque',
      'plungerStuck',
      'fastUnderPush',
    );
    const left = causeIds.filter((cause) => !ruledOut(card).includes(cause));
    expect(left).toEqual(['plungerStuckUp']);
    expect(pointsAt(finding('cupRecessed'), 'plungerStuckUp')).toBe(true);
  });

  it('does not let a pin that follows stand with any seized plunger', () => {
    expect(ruledOut(cardWith('pinFollows'))).toEqual(
      expect.arrayContaining(['plungerStuckUp', 'plungerStuckDown', 'plungerStuckInRotation']),
    );
  });

  it('has no finding that points at a cause and excludes it at once', () => {
    for (const entry of Object.values(evidence)) {
      expect(entry.pointsAt.filter((cause) => entry.against.includes(cause))).toEqual([]);
    }
  });

  it('can point at every cause and can exclude every cause', () => {
    const all = Object.values(evidence);
    for (const cause of causeIds) {
      expect(
        all.some((entry) => entry.pointsAt.includes(cause)),
        `${cause} pointed at`,
      ).toBe(true);
      expect(
        all.some((entry) => entry.against.includes(cause)),
        `${cause} excluded`,
      ).toBe(true);
    }
  });

  it('reads nothing from what is found after the set was mended', () => {
    const card = cardWith('pinStays', 'plungerFreed', 'pinFollows', 'creakHeard');
    expect(findingsAsReceived(card).map(({ code }) => code)).toEqual(['pinStays']);
    expect(ruledOut(card)).not.toContain('plungerStuckUp');
  });
});
