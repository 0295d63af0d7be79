import { PI } from '../laws/maths.ts';
import type { SimCommand } from './commands.ts';
import { moveFork } from './control.ts';
import type { SetDefinition } from './definition.ts';
import type { SimEvent } from './events.ts';
import { turnTo } from './handsOnEngine.ts';
import { camLift } from './kinematics.ts';
import { beginPull } from './pull.ts';
import type { SimState } from './state.ts';

type Control = Extract<
  SimCommand,
  {
    do:
      | 'setPlace'
      | 'moveThrottle'
      | 'moveStopLever'
      | 'holdDecompressor'
      | 'pullCord'
      | 'turnFlywheel'
      | 'setTap'
      | 'setCap'
      | 'fillTank'
      | 'drainBowl'
      | 'blockInlet';
  }
>;

const clamp01 = (x: number) => Math.max(0, Math.min(1, x));

/** The controls of the set and the precautions of the place. */
export function applyControl(
  def: SetDefinition,
  state: SimState,
  command: Control,
  events: SimEvent[],
): void {
  const { control, supply, engine } = state;
  const moved = (what: string, to: string | number) => events.push({ kind: 'controlMoved', what, to });
  switch (command.do) {
    case 'setPlace':
      state.place[command.what] = command.on;
      events.push({ kind: 'placeSet', what: command.what, on: command.on });
      return;
    case 'moveThrottle':
      control.throttle = clamp01(command.to);
      if (engine.omega === 0) moveFork(def, state, true);
      moved('throttle', control.throttle);
      return;
    case 'moveStopLever':
      control.stopLever = command.to;
      if (engine.omega === 0) moveFork(def, state, true);
      moved('stopLever', command.to);
      return;
    case 'holdDecompressor':
      control.decompressorHeld = command.held;
      moved('decompressor', command.held ? 'held' : 'letGo');
      return;
    case 'pullCord':
      beginPull(def, state, command.effort, command.letGoAt);
      return;
    case 'turnFlywheel':
      turnFlywheel(def, state, command.to);
      return;
    case 'setTap':
      supply.tapOpen = command.open;
      moved('tap', command.open ? 'open' : 'shut');
      return;
    case 'setCap':
      supply.capVented = command.vented;
      if (command.vented) supply.drawn = 0;
      moved('cap', command.vented ? 'vented' : 'shut');
      return;
    case 'fillTank':
      supply.tank = 0.9 * def.supply.tankVolume;
      moved('tank', 'filled');
      return;
    case 'drainBowl':
      supply.water = 0;
      moved('bowl', 'drained');
      return;
    case 'blockInlet':
      engine.inletBlocked = command.on ? 1 : 0;
      events.push({ kind: 'inletBlocked', on: command.on });
  }
}

function turnFlywheel(
  def: SetDefinition,
  state: SimState,
  to: 'compression' | 'lowSide' | 'highSide' | 'quarterTurn',
): void {
  const start = (left: number, untilStop: boolean) => {
    state.hand.flywheel = { left, elapsed: 0, torque: 0, untilStop };
  };
  // what faces the pump already needs no turning
  const isLow = camLift(def, state.engine.theta) === 0;
  if (to === 'lowSide') start(isLow ? 0.01 : turnTo(def, state, PI), false);
  else if (to === 'highSide') start(turnTo(def, state, 0), false);
  else if (to === 'quarterTurn') start(PI / 2, true);
  else start(4 * PI, true);
}
