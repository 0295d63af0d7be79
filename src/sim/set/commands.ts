/**
 * Everything that a person can do to the set, as plain data. SI units and radians.
 * A pointer, a key, a list button, a scripted worker and a replay all send these and nothing else.
 */

/** Threaded joints that a spanner or a screwdriver can turn. */
export const jointIds = [
  'pumpNut1',
  'pumpNut2',
  'holder',
  'pipeAtPump',
  'pipeAtInjector',
  'hoseClip',
  'bleedScrew',
] as const;
export type JointId = (typeof jointIds)[number];

/** Parts that come off and go back on. 'pump' is the whole pump, 'valve' the delivery valve with its seat. */
export const partIds = [
  'airCover',
  'windowCover',
  'hose',
  'pipe',
  'pump',
  'shims',
  'holder',
  'valveSpring',
  'valve',
  'retainer',
  'cup',
  'returnSpring',
  'plunger',
] as const;
export type PartId = (typeof partIds)[number];

/** Precautions and circumstances of the place. */
export const placeIds = [
  'loadIsolated',
  'openAir',
  'noFlame',
  'eyeProtection',
  'hearingProtection',
  'boardToHand',
  'trayUnder',
  'ragsClear',
  'helperToLift',
  'extinguisher',
] as const;
export type PlaceId = (typeof placeIds)[number];

/** Things that can be looked at, felt or tried; each yields one observation from the model. */
export const checkIds = [
  'airElement',
  'tank',
  'capVent',
  'bowl',
  'hoseFlow',
  'pinFollows',
  'unionFuel',
  'cupEnd',
  'pinTurn',
  'plungerTravel',
  'freeSlide',
  'plungerFace',
  'valveSeat',
  'shimCount',
  'leaks',
  'stopLeverProof',
  'running',
  'tapStands',
  'hoseLook',
  'fuelSample',
  'exhaust',
  'blowBy',
  'decompressorPlay',
  'oil',
  'camLift',
  'linkage',
  'nozzleSpray',
] as const;
export type CheckId = (typeof checkIds)[number];

export const efforts = ['weak', 'half', 'firm', 'hard'] as const;
export type Effort = (typeof efforts)[number];
export const hammerIds = ['light', 'medium', 'heavy', 'sledge'] as const;
export type HammerId = (typeof hammerIds)[number];
export const supportIds = ['hand', 'cloth', 'anvil', 'vice'] as const;
export type SupportId = (typeof supportIds)[number];
/** Where the loose pump is. 'vice' grips the flange in soft jaws, 'viceBody' squeezes the body itself. */
export const restIds = ['hand', 'cloth', 'anvil', 'vice', 'viceBody', 'tray'] as const;
export type RestId = (typeof restIds)[number];
export const strikeTargets = ['outletEnd', 'camEnd', 'plunger', 'cup', 'pin'] as const;
export type StrikeTarget = (typeof strikeTargets)[number];
export const openingIds = ['engineHole', 'pipeEnds', 'hoseEnd', 'holderEnd'] as const;
export type OpeningId = (typeof openingIds)[number];
export const cleanIds = ['pumpArea', 'barrel', 'plunger', 'valve', 'shimFace', 'spill'] as const;
export type CleanId = (typeof cleanIds)[number];
export const solventIds = ['releasingSolvent', 'diesel', 'acetone'] as const;
export type SolventId = (typeof solventIds)[number];
/** Repairs with a spare or a setting; 'valves' and the overhauls are work for those who are equipped for it. */
export const mendIds = [
  'airElement',
  'exhaust',
  'filter',
  'hose',
  'freshFuel',
  'decompressor',
  'valves',
  'governorLinkage',
  'injector',
  'deliveryValve',
  'returnSpring',
  'pipe',
  'camAndCup',
  'warmUp',
  'pumpOverhaul',
  'engineOverhaul',
] as const;
export type MendId = (typeof mendIds)[number];
export const pinToolIds = ['finger', 'lever', 'pliers'] as const;
export type PinToolId = (typeof pinToolIds)[number];

export type SimCommand =
  /** Takes or drops a precaution. */
  | { do: 'setPlace'; what: PlaceId; on: boolean }
  | { do: 'check'; what: CheckId; with?: 'card' | 'finger' }
  /** 0 = slowest, 1 = fastest. */
  | { do: 'moveThrottle'; to: number }
  | { do: 'moveStopLever'; to: 'run' | 'stop' }
  | { do: 'holdDecompressor'; held: boolean }
  /** One pull of the cord; letGoAt = share of the rope (0..1) at which the decompressor is let go, null = not during the pull. */
  | { do: 'pullCord'; effort: Effort; letGoAt: number | null }
  /** Turns the flywheel slowly by hand. */
  | { do: 'turnFlywheel'; to: 'compression' | 'lowSide' | 'highSide' | 'quarterTurn' }
  | { do: 'setTap'; open: boolean }
  | { do: 'setCap'; vented: boolean }
  | { do: 'fillTank' }
  | { do: 'drainBowl' }
  /** How far: 'slack' weeps and bleeds, 'off' runs it right off its thread. backup = second spanner on the body. */
  | { do: 'loosen'; joint: JointId; to: 'slack' | 'off'; backup: boolean }
  /** torque in N.m, > 0. */
  | { do: 'tighten'; joint: JointId; torque: number; backup: boolean; newWasher?: boolean }
  /** Takes a part off. held: the cup held back against its spring. guidePin: the pin eased out of the fork through the window. */
  | { do: 'remove'; part: PartId; held?: boolean; guidePin?: boolean }
  /** Fits a part. guidePin: the pin led into the fork through the window. turned: plunger half a turn out. thickness: shim pack, m. */
  | {
      do: 'fit';
      part: PartId;
      held?: boolean;
      guidePin?: boolean;
      turned?: boolean;
      thickness?: number;
      wet?: boolean;
    }
  | { do: 'cover'; opening: OpeningId; on: boolean }
  | { do: 'clean'; what: CleanId; with: 'brush' | 'swab' | 'rag' }
  | { do: 'placePump'; on: RestId; camUp: boolean }
  /** speed in m/s at the blow. block: wood between, or steel on the part itself. */
  | { do: 'strike'; target: StrikeTarget; hammer: HammerId; speed: number; block: 'wood' | 'none' }
  | { do: 'pushPin'; with: PinToolId; towards: 'stop' | 'full'; force: number }
  /** Pushes the loose pump's plunger by hand: force N, twist N.m, for `seconds`. */
  | { do: 'pushPlunger'; towards: 'cam' | 'outlet'; force: number; twist: number; seconds: number }
  /** A hand takes hold of a part (virtual coupling), is moved, lets go. Hand samples are not decisions. */
  | { do: 'grasp'; part: 'plunger' }
  | { do: 'handTo'; travel: number; twist: number }
  | { do: 'letGo' }
  | { do: 'soak'; with: SolventId }
  /** Lets time pass, s. */
  | { do: 'wait'; seconds: number }
  | { do: 'orderPair' }
  | { do: 'mend'; what: MendId }
  /** A board over the air inlet, to stop an engine that fuel no longer stops. */
  | { do: 'blockInlet'; on: boolean };

export type CommandName = SimCommand['do'];
