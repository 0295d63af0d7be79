import { Vector3 } from 'three';
import { type Pose, pose } from '../rig/pose.ts';

/** What the hand is doing in the picture before it becomes an act: shown, never part of the model. */
export type Held = {
  /** Name of the piece that is moved about, and how far (m). */
  part: string | null;
  readonly offset: Vector3;
  /** A tool at work on a part, and where. */
  tool: string | null;
  readonly toolAt: Pose;
  /** End of the pump on which the beech block lies. */
  blockOn: 'camEnd' | 'outletEnd' | null;
  /** Cord drawn out by the hand before the pull, m. */
  slackOut: number;
  /** What is being done, in words at the pointer; and what would be done at what the pointer is over. */
  words: string;
  would: string;
  /** The other hand helps: a second spanner on the body, the cup held. As the shift key does. */
  other: boolean;
  /** A new sealing washer goes under the holder when it is tightened. */
  newWasher: boolean;
  readonly pointer: { x: number; y: number; isTouch: boolean };
  hover: string | null;
};

/** An empty hand. */
export function emptyHand(): Held {
  return {
    part: null,
    offset: new Vector3(),
    tool: null,
    toolAt: pose(),
    blockOn: null,
    slackOut: 0,
    words: '',
    would: '',
    other: false,
    newWasher: false,
    pointer: { x: 0, y: 0, isTouch: false },
    hover: null,
  };
}

/** Lets go of everything but the block that lies on the pump. */
export function openHand(held: Held): void {
  held.part = null;
  held.offset.set(0, 0, 0);
  held.tool = null;
  held.slackOut = 0;
  held.words = '';
}
