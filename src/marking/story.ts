import type { Command, Job, JobEvent } from '../jobs/job.ts';
import type { Scenario } from '../jobs/scenario.ts';
import { jointsOf } from '../sim/set/blocks.ts';
import type { JointId, OpeningId, PartId, PlaceId } from '../sim/set/commands.ts';
import { openingIds, placeIds } from '../sim/set/commands.ts';
import type { SetDefinition } from '../sim/set/definition.ts';
import type { SimEvent } from '../sim/set/events.ts';
import type { AssemblyState, JointState, SimState } from '../sim/set/state.ts';
import { type Look, looksOf } from './telling.ts';

/** What anyone standing there could see, as it was just before a moment. */
export interface Scene {
  readonly place: Readonly<Record<PlaceId, boolean>>;
  readonly stopLever: 'run' | 'stop';
  readonly decompressorHeld: boolean;
  readonly tapOpen: boolean;
  readonly joints: Readonly<Record<JointId, JointState['at']>>;
  readonly parts: Readonly<AssemblyState['parts']>;
  readonly covered: Readonly<Record<OpeningId, boolean>>;
  /** Where the loose pump is; null on the engine. */
  readonly rest: string | null;
  readonly running: boolean;
}

/** One command, or a while in which things went on by themselves, and what came of it. */
export interface Moment {
  readonly at: number;
  /** Number of events before it; compare with Happening.order. */
  readonly order: number;
  /** The command given; null while time passes. */
  readonly command: Command | null;
  /** The command that this is a consequence of. */
  readonly cause: Command | null;
  readonly events: readonly JobEvent[];
  /** Before the command. */
  readonly scene: Scene;
}

/** One event with the moment it belongs to. */
export interface Happening {
  readonly at: number;
  /** Running number over all events, for before and after. */
  readonly order: number;
  readonly event: JobEvent;
  readonly moment: Moment;
}

/** The job as the rules read it. */
export interface Story {
  readonly def: SetDefinition;
  readonly scenario: Scenario;
  readonly moments: readonly Moment[];
  readonly happenings: readonly Happening[];
  /** Every look at the set as received. */
  readonly looks: readonly Look[];
  readonly end: Scene;
}

/** The scene at one instant of the model. */
export function sceneOf(sim: Readonly<SimState>): Scene {
  const { joints } = sim.assembly;
  return {
    place: { ...sim.place },
    stopLever: sim.control.stopLever,
    decompressorHeld: sim.control.decompressorHeld,
    tapOpen: sim.supply.tapOpen,
    joints: {
      pumpNut1: joints.pumpNut1.at,
      pumpNut2: joints.pumpNut2.at,
      holder: joints.holder.at,
      pipeAtPump: joints.pipeAtPump.at,
      pipeAtInjector: joints.pipeAtInjector.at,
      hoseClip: joints.hoseClip.at,
      bleedScrew: joints.bleedScrew.at,
    },
    parts: { ...sim.assembly.parts },
    covered: { ...sim.assembly.covered },
    rest: sim.pump.rest,
    running: sim.engine.running,
  };
}

/** A nut run on by the fingers is still slack: share of the working torque. */
const FINGER_TIGHT = 0.02;

const idOf = <Id extends string>(ids: readonly Id[], text: string): Id | undefined =>
  ids.find((id) => id === text);

function afterControl(scene: Scene, event: Extract<SimEvent, { kind: 'controlMoved' }>): Scene {
  if (event.what === 'stopLever') return { ...scene, stopLever: event.to === 'stop' ? 'stop' : 'run' };
  if (event.what === 'decompressor') return { ...scene, decompressorHeld: event.to === 'held' };
  if (event.what === 'tap') return { ...scene, tapOpen: event.to === 'open' };
  return scene;
}

function afterJoint(scene: Scene, joint: JointId, at: JointState['at']): Scene {
  return { ...scene, joints: { ...scene.joints, [joint]: at } };
}

/** Nuts that the fingers run on as their part goes on. */
function runOnByHand(scene: Scene, part: PartId): Scene {
  const off = (jointsOf[part] ?? []).filter((joint) => scene.joints[joint] === 'off');
  return off.reduce((after, joint) => afterJoint(after, joint, 'slack'), scene);
}

/** A pump that comes back from overhaul is whole, its holder tight. */
const wholePump = ['holder', 'valveSpring', 'valve', 'retainer', 'cup', 'returnSpring', 'plunger'] as const;

function overhauled(scene: Scene): Scene {
  const fitted = Object.fromEntries(wholePump.map((part) => [part, 'fitted' as const]));
  return afterJoint({ ...scene, parts: { ...scene.parts, ...fitted } }, 'holder', 'tight');
}

/** The scene after an event; events that change nothing one can see leave it as it was. */
export function sceneAfter(def: SetDefinition, scene: Scene, event: JobEvent): Scene {
  switch (event.kind) {
    case 'placeSet': {
      const what = idOf(placeIds, event.what);
      return what === undefined ? scene : { ...scene, place: { ...scene.place, [what]: event.on } };
    }
    case 'covered': {
      const opening = idOf(openingIds, event.opening);
      return opening === undefined ? scene : { ...scene, covered: { ...scene.covered, [opening]: event.on } };
    }
    case 'controlMoved':
      return afterControl(scene, event);
    case 'jointLoosened':
      return afterJoint(scene, event.joint, event.to === 'off' ? 'off' : 'slack');
    case 'jointTightened':
      return afterJoint(
        scene,
        event.joint,
        event.torque > FINGER_TIGHT * def.joints[event.joint].torque ? 'tight' : 'slack',
      );
    case 'partRemoved':
      return { ...scene, parts: { ...scene.parts, [event.part]: 'tray' } };
    case 'partFitted':
      return {
        ...runOnByHand(scene, event.part),
        parts: { ...scene.parts, [event.part]: 'fitted' },
        rest: event.part === 'pump' ? null : scene.rest,
      };
    case 'mended':
      return event.what === 'pumpOverhaul' ? overhauled(scene) : scene;
    case 'pumpPlaced':
      return { ...scene, rest: event.on };
    case 'started':
      return { ...scene, running: true };
    case 'stopped':
      return { ...scene, running: false };
    default:
      return scene;
  }
}

/** Reads a job's log from its first scene on. */
export function tellStory(def: SetDefinition, scenario: Scenario, start: Scene, log: Job['log']): Story {
  const moments: Moment[] = [];
  const happenings: Happening[] = [];
  let scene = start;
  let cause: Command | null = null;
  for (const { step, command, events } of log) {
    cause = command ?? cause;
    const moment: Moment = { at: step, order: happenings.length, command, cause, events, scene };
    moments.push(moment);
    for (const event of events) {
      happenings.push({ at: step, order: happenings.length, event, moment });
      scene = sceneAfter(def, scene, event);
    }
  }
  return { def, scenario, moments, happenings, looks: looksOf({ scenario, moments }), end: scene };
}
