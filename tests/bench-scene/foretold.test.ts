import { describe, expect, it } from 'vitest';
import { foretell } from '../../src/bench/handles/foretell.ts';
import { gripFor } from '../../src/bench/handles/grip.ts';
import { strikeTarget } from '../../src/bench/handles/hammer.ts';
import { leverWords } from '../../src/bench/handles/pull.ts';
import { controlClick, toolClick } from '../../src/bench/handles/use.ts';
import { letGoFor, otherHandFor, washerFor } from '../../src/bench/OtherHand.tsx';
import { stage, untilStill } from './scene.ts';

const at = stage();
const tools = ['hand', ...at.rig.tools];
const pieces = [...new Set(at.rig.all.map(({ id }) => id))];

/** Says of every tool at every piece what comes of it and what is told of it beforehand. */
function everything(): { does: boolean; told: string; which: string }[] {
  const sim = at.session.sim();
  return tools.flatMap((tool) =>
    pieces.map((piece) => {
      const click = tool === 'hand' ? controlClick(piece, sim) : toolClick(tool, piece, sim);
      const isTool = at.rig.tools.has(piece);
      return {
        does: isTool || click !== null || gripFor(sim, tool, piece, false) !== null,
        told: foretell(sim, tool, { piece, isTool, isBlockOn: false }),
        which: `${tool} at ${piece}`,
      };
    }),
  );
}

function check(): void {
  const all = everything();
  for (const { does, told, which } of all.filter((one) => one.does || one.told !== '')) {
    expect.soft(told !== '', which).toBe(does || which.startsWith('woodBlock'));
    // Words that would judge the act are for the marking, afterwards.
    expect
      .soft(told, which)
      .not.toMatch(/\b(right|wrong|good|bad|must|should|never|careful|safe|danger|damage)/i);
  }
  expect(all.filter(({ does }) => does).length).toBeGreaterThan(60);
}

describe('what a hand or a tool would do is said before it is done', () => {
  it('for every tool at every part, the pump on the engine', () => check());

  it('and with the pump off and opened', () => {
    const { session } = at;
    for (const joint of [
      'pipeAtPump',
      'pipeAtInjector',
      'hoseClip',
      'holder',
      'pumpNut1',
      'pumpNut2',
    ] as const)
      session.do({ do: 'loosen', joint, to: 'off', backup: true });
    for (const part of ['pipe', 'hose', 'windowCover', 'pump', 'holder', 'valveSpring', 'valve'] as const)
      session.do({ do: 'remove', part, guidePin: true });
    untilStill(session);
    at.pose();
    expect(session.sim().pump.rest).not.toBeNull();
    check();
  });

  it('what goes with it is offered where it has a meaning: the other hand, and a washer under the holder', () => {
    const { session } = at;
    session.look({ inHand: 'hand' });
    expect(washerFor(session)).toBeNull();
    session.look({ inHand: 'torqueWrench' });
    expect(otherHandFor(session)).toMatch(/second spanner/i);
    expect(washerFor(session)).toBeNull();
    session.do({ do: 'placePump', on: 'vice', camUp: false });
    session.do({ do: 'loosen', joint: 'holder', to: 'slack', backup: false });
    expect(washerFor(session)).toMatch(/washer/i);
    // a held decompressor is let go on the way or not, as the hand chooses before the pull
    expect(letGoFor(session)).toBeNull();
    session.do({ do: 'holdDecompressor', held: true });
    expect(letGoFor(session)).toBe(true);
    expect(leverWords(session)).toContain('let go');
    session.look({ letGoAt: null });
    expect(letGoFor(session)).toBe(false);
    expect(leverWords(session)).toContain('held all the way');
    session.do({ do: 'holdDecompressor', held: false });
    session.look({ inHand: 'swab' });
    expect(otherHandFor(session) ?? washerFor(session)).toBeNull();
  });

  it('which end of a standing pump the block goes on and the hammer lands on: the upper one', () => {
    const { session, rig } = at;
    const over = { piece: 'pumpBody', isTool: false, isBlockOn: false };
    for (const camUp of [true, false]) {
      session.do({ do: 'placePump', on: 'cloth', camUp });
      at.pose();
      const end = camUp ? 'cam end' : 'outlet end';
      expect(foretell(session.sim(), 'woodBlock', over)).toContain(end);
      const low = rig.piece('pumpBody').group.position.clone();
      expect(strikeTarget({ session, rig }, 'pumpBody', low)).toBe(camUp ? 'camEnd' : 'outletEnd');
    }
    const onBlock = { piece: 'woodBlock', isTool: true, isBlockOn: true };
    expect(foretell(session.sim(), 'mediumHammer', onBlock)).toContain('swing');
    expect(foretell(session.sim(), 'hand', onBlock)).toContain('off the pump');
  });
});
