import RAPIER from '@dimforge/rapier3d-compat';
import { loadingForce, unloadingForce } from '../../src/sim/laws/blockContact.ts';
import type { StrikeInput } from '../../src/sim/laws/strikeMotion.ts';
import { supportForce } from '../../src/sim/laws/supports.ts';

/*
 * A blow in a general rigid-body engine (rapier, single precision): three bodies along one line, the plunger
 * lying on the body and held by Coulomb friction alone. An engine of this kind knows no elastic block, so the
 * forces of block and support are put on the bodies from outside, once a step; what the engine does itself is
 * to move the bodies and to let the plunger stick or slide.
 */

/** Loads the engine's compiled part, which is inside the package. */
export async function loadEngine(): Promise<void> {
  await RAPIER.init();
}

/** Acceleration with which the plunger is pressed on the body, m/s2; friction is that times its mass. */
const PRESS = 1000;

interface Scene {
  readonly world: RAPIER.World;
  readonly hammer: RAPIER.RigidBody;
  readonly body: RAPIER.RigidBody;
  readonly plunger: RAPIER.RigidBody;
}

function scene(input: StrikeInput, friction: number, dt: number): Scene {
  const { plunger } = input;
  if (plunger === null) throw new Error('the plunger is out');
  const world = new RAPIER.World({ x: 0, y: -PRESS, z: 0 });
  world.timestep = dt;
  world.lengthUnit = 0.01;
  const part = (mass: number, y: number, isFreeUpwards: boolean, half: [number, number, number] | null) => {
    const desc = RAPIER.RigidBodyDesc.dynamic()
      .setTranslation(0, y, 0)
      // with the third axis locked as well, the engine's friction does nothing at all
      .enabledTranslations(true, isFreeUpwards, true)
      .lockRotations()
      .setCanSleep(false)
      .setAdditionalMass(mass);
    const made = world.createRigidBody(desc);
    if (half !== null) {
      const shape = RAPIER.ColliderDesc.cuboid(...half).setDensity(0);
      world.createCollider(shape.setFriction(friction / (plunger.mass * PRESS)).setRestitution(0), made);
    }
    return made;
  };
  const body = part(input.bodyMass, -0.01, false, [0.05, 0.01, 0.01]);
  const on = part(plunger.mass, 0.005, true, [0.005, 0.005, 0.005]);
  const hammer = part(input.hammerMass, 0, false, null);
  // let it settle on the body before the hammer arrives
  for (let i = 0; i < 20; i += 1) world.step();
  hammer.setLinvel({ x: input.hammerSpeed, y: 0, z: 0 }, true);
  return { world, hammer, body, plunger: on };
}

/** What the engine makes of a blow; slip m, speeds m/s. */
export interface EngineBlow {
  readonly slip: number;
  readonly bodySpeed: number;
  readonly hammerSpeed: number;
  readonly peakForce: number;
}

/** A blow towards the outlet on the body, the plunger held by `friction` (N) alone, followed for `seconds`. */
export function engineBlow(input: StrikeInput, friction: number, seconds: number, dt: number): EngineBlow {
  const { world, hammer, body, plunger } = scene(input, friction, dt);
  const at = { x: 0, y: 0, z: 0 };
  const start = plunger.translation().x - body.translation().x;
  const rest = body.translation().x;
  const from = hammer.translation().x - rest;
  let deepest = 0;
  let touching = true;
  let peakForce = 0;
  for (let i = 0; i < Math.round(seconds / dt); i += 1) {
    const x = body.translation().x;
    const pressed = hammer.translation().x - x - from;
    let force = 0;
    if (touching && pressed >= deepest) {
      deepest = pressed;
      force = loadingForce(input.block, pressed);
    } else if (touching) {
      force = unloadingForce(input.block, pressed, deepest);
      touching = force > 0;
    }
    peakForce = Math.max(peakForce, force);
    hammer.resetForces(false);
    body.resetForces(false);
    at.x = -force;
    hammer.addForce(at, true);
    at.x = force - supportForce(input.support, x - rest, body.linvel().x);
    body.addForce(at, true);
    world.step();
  }
  const told = {
    slip: plunger.translation().x - body.translation().x - start,
    bodySpeed: body.linvel().x,
    hammerSpeed: hammer.linvel().x,
    peakForce,
  };
  world.free();
  return told;
}

/** Speeds after two free masses met with a coefficient of restitution, by the engine's own contact, m/s. */
export function engineImpact(
  striking: number,
  struck: number,
  speed: number,
  restitution: number,
): { striking: number; struck: number } {
  const world = new RAPIER.World({ x: 0, y: 0, z: 0 });
  world.timestep = 1e-4;
  world.lengthUnit = 0.01;
  const make = (mass: number, x: number) => {
    const desc = RAPIER.RigidBodyDesc.dynamic()
      .setTranslation(x, 0, 0)
      .lockRotations()
      .setAdditionalMass(mass);
    const made = world.createRigidBody(desc);
    const shape = RAPIER.ColliderDesc.cuboid(0.01, 0.01, 0.01).setDensity(0).setFriction(0);
    world.createCollider(shape.setRestitution(restitution), made);
    return made;
  };
  const first = make(striking, -0.025);
  const second = make(struck, 0);
  first.setLinvel({ x: speed, y: 0, z: 0 }, true);
  for (let i = 0; i < 200; i += 1) world.step();
  const told = { striking: first.linvel().x, struck: second.linvel().x };
  world.free();
  return told;
}
