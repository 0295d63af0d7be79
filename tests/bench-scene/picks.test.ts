import { Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { leverPlaces } from '../../src/bench/engine/controls.ts';
import { fuelPlaces } from '../../src/bench/engine/fuel.ts';
import { dimsOf } from '../../src/bench/form/dims.ts';
import { middleOf } from '../../src/bench/handles/spanner.ts';
import { knownAs, nameOfPiece, piecesOf } from '../../src/bench/names.ts';
import { onSet } from '../../src/bench/rig/setPieces.ts';
import { lookFor, viewIds } from '../../src/bench/views.ts';
import { hitTowards, onPump, stage } from './scene.ts';

// Building the scene takes a while: one serves all, and only the last test takes something off.
const at = stage();
const middle = (piece: string): Vector3 => middleOf(at.rig.piece(piece));

describe('a ray from a viewpoint meets the part that a person would mean', () => {
  it('over the whole set', () => {
    for (const piece of [
      'tank',
      'generator',
      'pumpBody',
      'cordHandle',
      'lightHammer',
      'vice',
      'tray',
      'airCover',
    ]) {
      // The vice is two pieces of one name: which jaw is in front does not matter.
      expect.soft(knownAs(hitTowards(at, 'set', middle(piece)) ?? ''), piece).toBe(knownAs(piece));
    }
  });

  it('at the pump on the engine', () => {
    const d = dimsOf(at.def, 'body');
    expect.soft(hitTowards(at, 'pump', onPump(at, 0, 0.055, d('upperRadius')))).toBe('pumpBody');
    for (const piece of ['pumpNut1', 'pumpNut2', 'windowCover', 'bleedScrew', 'pipeAtPump']) {
      expect.soft(hitTowards(at, 'pump', middle(piece)), piece).toBe(piece);
    }
    expect
      .soft(hitTowards(at, 'pump', onPump(at, 0.045, dimsOf(at.def, 'body')('inletHeight'), 0.003)))
      .toBe('hose');
  });

  it('on the fuel side and at the injector', () => {
    expect.soft(hitTowards(at, 'fuel', middle('bowl'))).toBe('bowl');
    expect
      .soft(hitTowards(at, 'fuel', onSet(fuelPlaces(at.def).tap).p.add(new Vector3(0, -0.018, 0.014))))
      .toBe('tap');
    expect.soft(hitTowards(at, 'injector', middle('pipeAtInjector'))).toBe('pipeAtInjector');
    const levers = leverPlaces(at.def);
    expect.soft(hitTowards(at, 'injector', onSet(levers.decompressor).p)).toBe('decompressor');
  });

  it('at the levers', () => {
    expect.soft(hitTowards(at, 'set', middle('stopLever'))).toBe('stopLever');
    expect.soft(hitTowards(at, 'set', middle('throttle'))).toMatch(/throttle|quadrant/);
  });
});

describe('viewpoints', () => {
  it('have each a look of their own, and an unknown name shows the whole set', () => {
    const keys = viewIds.map((view) => {
      const look = lookFor(at.def, view, at.session.sim());
      return [...look.at.toArray(), ...look.from.toArray(), look.radius].map((x) => x.toFixed(4)).join(' ');
    });
    expect(new Set(keys).size).toBeGreaterThanOrEqual(viewIds.length - 1);
    expect(lookFor(at.def, 'nowhere', at.session.sim())).toEqual(lookFor(at.def, 'set', at.session.sim()));
  });
});

describe('names', () => {
  it('lead from every part of the commands to a piece and back', () => {
    for (const name of [
      'windowCover',
      'hose',
      'pipe',
      'shims',
      'holder',
      'valveSpring',
      'valve',
      'retainer',
      'cup',
      'returnSpring',
      'plunger',
      'airCover',
      'pumpNut1',
      'bleedScrew',
      'tap',
      'cord',
      'flywheel',
    ]) {
      const [piece] = piecesOf(name);
      expect.soft(piece, name).toBeDefined();
      expect.soft(knownAs(piece ?? ''), name).toBe(name);
      expect.soft(nameOfPiece(piece ?? ''), name).not.toBeNull();
    }
  });
});

describe('with the window open, a ray', () => {
  it('meets pin and fork', () => {
    at.session.do({ do: 'remove', part: 'windowCover' });
    at.pose();
    const pin = at.rig.piece('pin').group.localToWorld(new Vector3(0, 0, 0.019));
    expect.soft(hitTowards(at, 'window', pin)).toBe('pin');
    const tine = at.rig
      .piece('fork')
      .group.localToWorld(
        new Vector3(0.0033, dimsOf(at.def, 'fork')('pivotBelow') + 0.016, dimsOf(at.def, 'fork')('headTo')),
      );
    expect.soft(hitTowards(at, 'window', tine)).toBe('fork');
  });
});
