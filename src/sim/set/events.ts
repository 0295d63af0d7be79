import type { CheckId, CommandName, JointId, MendId, PartId } from './commands.ts';
import type { HurtKind } from './state.ts';

/** Why an act is not possible as the set stands. Words for people live in the panels. */
export type BlockCode =
  | 'already'
  | 'notFitted'
  | 'notOff'
  | 'blockedBy'
  | 'jointTight'
  | 'turnsInHand'
  | 'pumpOnEngine'
  | 'pumpOff'
  | 'engineTurning'
  | 'cannotReach'
  | 'pinStuck'
  | 'plungerStuck'
  | 'needsHeld'
  | 'noPart'
  | 'badValue'
  | 'handsFull';

/** What the set answered: past tense, with numbers in SI. */
export type SimEvent =
  | { kind: 'refused'; act: CommandName; code: BlockCode; by: string }
  | { kind: 'placeSet'; what: string; on: boolean }
  | { kind: 'observed'; check: CheckId; values: Record<string, number | string | boolean> }
  | { kind: 'controlMoved'; what: string; to: string | number }
  | {
      kind: 'pullEnded';
      effort: string;
      restAngle: number;
      peakForce: number;
      peakSpeed: number;
      work: number;
      turns: number;
      passedTdc: boolean;
      stoppedAt: number | null;
      strokes: number;
      creaks: number;
      injected: number;
      fired: boolean;
      held: boolean;
      fuelAtSlack: number;
      airAtSlack: number;
      lastAirShare: number;
    }
  | { kind: 'crankTurned'; angle: number; lift: number; resisted: boolean }
  /** torque: what it took, N.m. */
  | { kind: 'jointLoosened'; joint: JointId; to: string; backup: boolean; torque?: number }
  | { kind: 'jointTightened'; joint: JointId; torque: number; clamp: number; backup: boolean }
  | { kind: 'partRemoved'; part: PartId }
  | { kind: 'partFitted'; part: PartId; inSlot: boolean; turned: boolean }
  | { kind: 'covered'; opening: string; on: boolean }
  | { kind: 'cleaned'; what: string; with: string }
  | { kind: 'pumpPlaced'; on: string; camUp: boolean }
  | {
      kind: 'struck';
      target: string;
      hammer: string;
      speed: number;
      block: string;
      support: string;
      peakForce: number;
      slip: number;
      travel: number;
      moved: boolean;
      freed: boolean;
      trace: [number, number][];
    }
  | { kind: 'pinPushed'; with: string; force: number; turned: number; bent: number }
  | { kind: 'plungerPushed'; force: number; moved: number; travel: number; hold: number }
  /** The return spring took the loose plunger from one travel to another, m. */
  | { kind: 'plungerSprang'; from: number; to: number }
  | { kind: 'soaked'; with: string }
  | { kind: 'waited'; seconds: number }
  | { kind: 'bled'; where: string; fuel: number; air: number; clear: boolean }
  | { kind: 'spilled'; volume: number; caught: boolean }
  | { kind: 'dirtGotIn'; where: string; grit: number }
  | { kind: 'pumpCocked'; force: number }
  | { kind: 'cupFlew'; force: number; held: boolean }
  | { kind: 'damaged'; part: string; what: string }
  | { kind: 'hurt'; what: HurtKind }
  | { kind: 'fired'; angle: number; speed: number; fuel: number }
  | { kind: 'started' }
  | { kind: 'stopped'; why: 'fuel' | 'air' | 'wrecked' | 'stalled' }
  | { kind: 'ranAway'; speed: number }
  | { kind: 'kickedBack'; speed: number }
  | { kind: 'pairOrdered' }
  | { kind: 'mended'; what: MendId }
  | { kind: 'inletBlocked'; on: boolean }
  /** span: from least to greatest travel while it was held, m; turned and peakTwist: rad and N.m, signed. */
  | {
      kind: 'graspEnded';
      moved: number;
      span: number;
      peakForce: number;
      turned: number;
      peakTwist: number;
      breaks: number;
      travel: number;
    };

export type SimEventKind = SimEvent['kind'];
