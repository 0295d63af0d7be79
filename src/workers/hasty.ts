import type { Worker } from './worker.ts';

/** Knows that it is the pump, and goes at it with a steel hammer: valve left in, nothing clean, nothing bled. */
export const hasty: Worker = {
  name: 'hasty',
  *work({ def }) {
    yield { do: 'pullCord', effort: 'hard', letGoAt: null };
    yield { do: 'setTap', open: false };
    yield { do: 'loosen', joint: 'pipeAtPump', to: 'off', backup: false };
    yield { do: 'loosen', joint: 'pipeAtInjector', to: 'off', backup: false };
    yield { do: 'remove', part: 'pipe' };
    yield { do: 'loosen', joint: 'hoseClip', to: 'off', backup: false };
    yield { do: 'remove', part: 'hose' };
    yield { do: 'loosen', joint: 'pumpNut1', to: 'off', backup: false };
    yield { do: 'loosen', joint: 'pumpNut2', to: 'off', backup: false };
    yield { do: 'remove', part: 'pump' };
    yield { do: 'pushPin', with: 'pliers', towards: 'full', force: 200 };
    yield { do: 'placePump', on: 'anvil', camUp: true };
    for (let blow = 0; blow < 6; blow += 1) {
      yield { do: 'strike', target: 'camEnd', hammer: 'heavy', speed: 4, block: 'none' };
    }
    for (let blow = 0; blow < 3; blow += 1) {
      yield { do: 'strike', target: 'cup', hammer: 'heavy', speed: 3, block: 'none' };
    }
    yield { do: 'fit', part: 'pump' };
    yield { do: 'tighten', joint: 'pumpNut1', torque: def.joints.pumpNut1.torque, backup: false };
    yield { do: 'tighten', joint: 'pumpNut2', torque: def.joints.pumpNut2.torque, backup: false };
    yield { do: 'fit', part: 'hose' };
    yield { do: 'tighten', joint: 'hoseClip', torque: 3, backup: false };
    yield { do: 'setTap', open: true };
    yield { do: 'fit', part: 'pipe' };
    yield { do: 'tighten', joint: 'pipeAtPump', torque: 45, backup: false };
    yield { do: 'tighten', joint: 'pipeAtInjector', torque: 45, backup: false };
    yield { do: 'moveThrottle', to: 1 };
    for (let pull = 0; pull < 4; pull += 1) {
      yield { do: 'holdDecompressor', held: true };
      yield { do: 'pullCord', effort: 'hard', letGoAt: 0.6 };
    }
    yield { do: 'handOver' };
  },
};
