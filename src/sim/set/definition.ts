import * as v from 'valibot';

const positive = v.pipe(v.number(), v.gtValue(0));
const notNegative = v.pipe(v.number(), v.minValue(0));
const angle = v.pipe(v.number(), v.minValue(-6.2832), v.maxValue(6.2832));
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const text = v.pipe(v.string(), v.minLength(1), v.maxLength(80));
const numbers = <K extends string>(...keys: K[]) =>
  v.strictObject(Object.fromEntries(keys.map((k) => [k, positive])) as Record<K, typeof positive>);

const joint = numbers('thread', 'torque', 'factor', 'crush', 'weep');
const support = v.strictObject({ stiffness: positive, damping: positive, oneSided: v.boolean() });

/**
 * One set: every dimension, material, spring, clearance, volume, thread and torque, in SI and radians.
 * models/bench-set/MODEL.md says what each number is and where it comes from.
 */
export const setSchema = v.strictObject({
  format: v.literal('freestroke-set/1'),
  name: text,
  crank: v.strictObject({
    ...numbers(
      'bore',
      'stroke',
      'rod',
      'compressionRatio',
      'inertia',
      'frictionBase',
      'breakaway',
      'thickeningReference',
      'flywheelRadius',
    ).entries,
    inletCloses: angle,
    exhaustOpens: angle,
    frictionSpeed: notNegative,
    windage: notNegative,
    thickening: notNegative,
  }),
  gas: numbers(
    'chargePressure',
    'chargeHeating',
    'exhaustPressure',
    'gamma',
    'gasConstant',
    'ringOrifice',
    'ringDischarge',
    'decompressorArea',
    'decompressorDischarge',
    'heatFactor',
    'heatExponent',
    'gasConductivity',
    'gasViscosity',
  ),
  combustion: numbers(
    'heatingValue',
    'airFuelLimit',
    'leastFuel',
    'leastTemperature',
    'largestDrop',
    'latestIgnition',
    'burnAngle',
  ),
  starter: v.strictObject({
    ...numbers('pulleyRadius', 'ropeTravel', 'efficiency', 'rise', 'handSpeedLimit', 'returnTime').entries,
    effortForce: numbers('weak', 'half', 'firm', 'hard'),
  }),
  cam: v.strictObject({
    ...numbers('baseRadius', 'noseRadius', 'lift', 'flankAngle').entries,
    portClosure: angle,
  }),
  pump: numbers(
    'plungerDiameter',
    'contactLength',
    'topStop',
    'portLift',
    'helixTangent',
    'startStroke',
    'fullStroke',
    'idleStroke',
    'chamberVolume',
    'galleryVolume',
    'radialClearance',
    'eccentricity',
    'sealingLand',
    'valveOpening',
    'retraction',
    'seatLeak',
    'bodyMass',
    'movingMass',
    'nominalShim',
    'cupFlush',
    'pinDiameter',
    'pinArm',
    'pinYield',
    'slotWidth',
    'linkageTorque',
    'freeTurnTorque',
  ),
  spring: numbers('wire', 'meanDiameter', 'activeCoils', 'shearModulus', 'preload'),
  line: v.strictObject({
    ...numbers('volume', 'length', 'bore', 'bulkModulus').entries,
    slugFraction: share,
  }),
  injector: numbers(
    'openingPressure',
    'closingPressure',
    'holes',
    'holeDiameter',
    'discharge',
    'guideLeak',
    'sprayWeber',
    'surfaceTension',
  ),
  fuel: v.strictObject({
    density15: positive,
    walther: v.tuple([v.number(), v.number()]),
    vapourPressure: notNegative,
    cloudPoint: positive,
    plugging: positive,
    cetane: positive,
    petrolCetane: positive,
    petrolDensity15: positive,
  }),
  supply: numbers('tankVolume', 'head', 'hoseArea', 'gravityFlow', 'bowlVolume'),
  governor: numbers('idleSpeed', 'ratedSpeed', 'droop', 'lag', 'overspeed', 'wreckSpeed', 'wreckTime'),
  load: numbers('ratedTorque'),
  bond: v.strictObject({
    ...numbers('stribeckSpeed', 'wetWorking', 'dryWorking', 'fatigueExponent', 'soakTime').entries,
    kineticShare: share,
    firstSlipLoss: share,
    fatigueShare: share,
    fatigueThreshold: share,
    fatigueRaise: share,
    soakResidual: share,
  }),
  blow: v.strictObject({
    ...numbers(
      'woodStiffness',
      'blockRelief',
      'steelModulus',
      'faceRadius',
      'yieldSoft',
      'yieldHard',
      'damageForce',
      'crackForce',
    ).entries,
    woodRestitution: share,
    steelPoisson: share,
    hammers: numbers('light', 'medium', 'heavy', 'sledge'),
    supports: v.strictObject({ hand: support, cloth: support, anvil: support, vice: support }),
  }),
  hand: numbers(
    'push',
    'fingerForce',
    'pliersForce',
    'leverForce',
    'coupling',
    'gripTorque',
    'steadyTorque',
    'fingerTwist',
  ),
  joints: v.strictObject({
    pumpNut1: joint,
    pumpNut2: joint,
    holder: joint,
    pipeAtPump: joint,
    pipeAtInjector: joint,
    hoseClip: joint,
    bleedScrew: joint,
  }),
  materials: v.record(text, numbers('density', 'modulus')),
  /** Drawing dimensions and positions along the part's own axis, m, by part. */
  shapes: v.record(text, v.record(text, v.pipe(v.number(), v.finite()))),
});

/** The validated set definition; see setSchema. */
export type SetDefinition = v.InferOutput<typeof setSchema>;
