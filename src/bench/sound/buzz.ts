import type { Jolt } from './jolts.ts';

/** Passes a jolt to whatever can shake: a phone, and every gamepad with a motor. Does nothing where nothing can. */
export function buzz({ ms, strength }: Jolt): void {
  if ('vibrate' in navigator && navigator.userActivation?.hasBeenActive !== false)
    navigator.vibrate(Math.max(1, Math.round(ms * (0.5 + 0.5 * strength))));
  for (const pad of padsAtHand())
    void pad.vibrationActuator?.playEffect('dual-rumble', {
      duration: ms,
      strongMagnitude: strength,
      weakMagnitude: Math.min(1, 0.4 + strength / 2),
    });
}

/** Gamepads that are connected now. */
export function padsAtHand(): Gamepad[] {
  return 'getGamepads' in navigator ? navigator.getGamepads().filter((pad) => pad !== null) : [];
}

/** Whether this device has anything that can shake in the hand. */
export function canBuzz(): boolean {
  const isHandheld = window.matchMedia('(pointer: coarse)').matches;
  return ('vibrate' in navigator && isHandheld) || padsAtHand().length > 0;
}
