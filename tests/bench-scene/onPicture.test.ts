import { describe, expect, it } from 'vitest';
import { gripFor } from '../../src/bench/handles/grip.ts';
import { controlClick, toolClick } from '../../src/bench/handles/use.ts';
import { knownAs } from '../../src/bench/names.ts';
import { type Act, initialValues } from '../../src/panels/acts/act.ts';
import { allActs } from '../../src/panels/acts/catalogue.ts';
import { onPicture, type PictureWay } from '../../src/panels/acts/onPicture.ts';
import { stripActs } from '../../src/panels/bench/PartStrip.tsx';
import type { SimCommand } from '../../src/sim/set/commands.ts';
import { copyState } from '../../src/sim/set/snapshot.ts';
import type { SimState } from '../../src/sim/set/state.ts';
import { stage, untilStill } from './scene.ts';

const acts = new Map(allActs().map(({ act }) => [act.id, act]));
const at = stage();
const picked = new Set([
  ...at.rig.all.map(({ id }) => knownAs(id)).filter((name) => name !== null),
  ...at.rig.tools,
]);

/** The set as it comes, with the pump off and whole, and with everything of the pump off. */
function conditions(): SimState[] {
  const { session } = at;
  const seen = [copyState(session.sim())];
  const joints = ['pipeAtPump', 'pipeAtInjector', 'hoseClip', 'holder', 'pumpNut1', 'pumpNut2'] as const;
  for (const joint of joints) session.do({ do: 'loosen', joint, to: 'off', backup: true });
  for (const part of ['pipe', 'hose', 'windowCover', 'airCover', 'pump'] as const)
    session.do({ do: 'remove', part, guidePin: true });
  untilStill(session);
  seen.push(copyState(session.sim()));
  const off = copyState(session.sim());
  for (const part of [
    'holder',
    'valveSpring',
    'valve',
    'retainer',
    'cup',
    'returnSpring',
    'plunger',
  ] as const)
    off.assembly.parts[part] = 'tray';
  off.assembly.parts.shims = 'tray';
  return [...seen, off];
}
const states = conditions();

/** What an act's command is about, by which the picture's own way must agree with it. */
function about(command: SimCommand): string {
  const { do: kind } = command;
  if (kind === 'check' || kind === 'clean' || kind === 'setPlace') return `${kind} ${command.what}`;
  return kind === 'cover' ? `cover ${command.opening}` : kind;
}

const grips: Readonly<Record<string, readonly string[]>> = {
  moveThrottle: ['throttle'],
  pullCord: ['cord'],
  loosen: ['joint'],
  tighten: ['joint'],
  remove: ['part'],
  fit: ['part', 'pump'],
  strike: ['hammer'],
  pushPin: ['pin'],
  placePump: ['pump'],
  grasp: ['plunger'],
  pushPlunger: ['plunger'],
};

/** Whether one way does what its act does, in one condition of the set at least. */
function works(act: Act, way: PictureWay): boolean {
  return states.some((sim) => {
    const command = act.command(initialValues(act), sim);
    if (way.by === 'strip')
      return way.at.some((name) =>
        stripActs(name, 'hand', sim.pump.rest !== null, () => true)
          .split(' ')
          .includes(act.id),
      );
    if (way.by === 'click') {
      const done = way.tool === 'hand' ? controlClick(way.piece, sim) : toolClick(way.tool, way.piece, sim);
      return done !== null && about(done) === about(command);
    }
    const grip = gripFor(sim, way.tool, way.piece, false);
    if (grip === null || !(grips[command.do] ?? []).includes(grip.kind)) return false;
    const part = 'part' in command ? command.part : null;
    if (grip.kind === 'part') return grip.part === part;
    return grip.kind !== 'joint' || ('joint' in command && command.joint === grip.joint);
  });
}

describe('the picture', () => {
  it('has a way to every act of the catalogue, and to nothing else', () => {
    expect([...acts.keys()].filter((id) => (onPicture[id] ?? []).length === 0)).toEqual([]);
    expect(Object.keys(onPicture).filter((id) => !acts.has(id))).toEqual([]);
  });

  it('does by each of its ways what the list would do', () => {
    for (const [id, ways] of Object.entries(onPicture)) {
      const act = acts.get(id);
      if (act === undefined) throw new Error(id);
      for (const way of ways) expect.soft(works(act, way), `${id}: ${JSON.stringify(way)}`).toBe(true);
    }
  });

  it('lists acts only at things that can be picked in it', () => {
    const named = Object.values(onPicture).flatMap((ways) =>
      ways.flatMap((way) => (way.by === 'strip' ? way.at : [])),
    );
    expect([...new Set(named)].filter((name) => !picked.has(name))).toEqual([]);
  });

  it('lists looks before repairs, and what is picked before the tool in the hand', () => {
    const listed = (name: string, tool: string) => stripActs(name, tool, true, () => true).split(' ');
    expect(listed('bowl', 'hand')).toEqual(['check-bowl', 'drain', 'check-fuelSample', 'mend-filter']);
    const both = listed('valve', 'swab');
    expect(both.indexOf('check-valveSeat')).toBeLessThan(both.indexOf('place-ragsClear'));
  });

  it('lists no more at one thing than a strip holds', () => {
    // Two rows of a strip on the narrowest bench beside an open card: a choice of ours, no source.
    for (const name of picked)
      for (const sim of states) {
        const listed = stripActs(name, 'hand', sim.pump.rest !== null, (act) => act.shown?.(sim) ?? true);
        expect.soft(listed.split(' ').length, name).toBeLessThanOrEqual(7);
      }
  });
});
