import fc from 'fast-check';
import {
  checkIds,
  cleanIds,
  efforts,
  hammerIds,
  jointIds,
  openingIds,
  partIds,
  pinToolIds,
  placeIds,
  restIds,
  type SimCommand,
  solventIds,
  strikeTargets,
} from '../../src/sim/set/commands.ts';

/** The numbers that a command takes, each by what a person can do with it. */
interface Numbers {
  share: fc.Arbitrary<number>;
  torque: fc.Arbitrary<number>;
  speed: fc.Arbitrary<number>;
  force: fc.Arbitrary<number>;
  twist: fc.Arbitrary<number>;
  seconds: fc.Arbitrary<number>;
  travel: fc.Arbitrary<number>;
  thickness: fc.Arbitrary<number>;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Numbers that hands and tools can give. */
export const possible: Numbers = {
  share: between(0, 1),
  torque: between(0.1, 120),
  speed: between(0.1, 6),
  force: between(0, 400),
  twist: between(-0.5, 0.5),
  seconds: between(0.01, 4),
  travel: between(-0.01, 0.02),
  thickness: between(0, 0.002),
};

const anything = fc.oneof(
  { weight: 2, arbitrary: fc.double() },
  { weight: 2, arbitrary: between(-1e3, 1e3) },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      Number.NaN,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      0,
      -0,
      -1,
      -1e-9,
      1e9,
      1e300,
      Number.MIN_VALUE,
    ),
  },
);

/** Any number at all: what a broken recording or a wrong program could send. */
export const absurd: Numbers = {
  share: anything,
  torque: anything,
  speed: anything,
  force: anything,
  twist: anything,
  seconds: anything,
  travel: anything,
  thickness: anything,
};

const yes = fc.boolean();

/** Commands on engine, cord, levers and fuel side. */
function onEngine(n: Numbers): fc.Arbitrary<SimCommand>[] {
  return [
    fc.record({ do: fc.constant('setPlace'), what: fc.constantFrom(...placeIds), on: yes }),
    fc.record(
      {
        do: fc.constant('check'),
        what: fc.constantFrom(...checkIds),
        with: fc.constantFrom('card', 'finger'),
      },
      { requiredKeys: ['do', 'what'] },
    ),
    fc.record({ do: fc.constant('moveThrottle'), to: n.share }),
    fc.record({ do: fc.constant('moveStopLever'), to: fc.constantFrom('run', 'stop') }),
    fc.record({ do: fc.constant('holdDecompressor'), held: yes }),
    fc.record({
      do: fc.constant('pullCord'),
      effort: fc.constantFrom(...efforts),
      letGoAt: fc.option(n.share, { nil: null }),
    }),
    fc.record({
      do: fc.constant('turnFlywheel'),
      to: fc.constantFrom('compression', 'lowSide', 'highSide', 'quarterTurn'),
    }),
    fc.record({ do: fc.constant('setTap'), open: yes }),
    fc.record({ do: fc.constant('setCap'), vented: yes }),
    fc.constant<SimCommand>({ do: 'fillTank' }),
    fc.constant<SimCommand>({ do: 'drainBowl' }),
    fc.record({ do: fc.constant('blockInlet'), on: yes }),
    fc.record({ do: fc.constant('wait'), seconds: n.seconds }),
  ];
}

/** Commands on joints and parts. */
function onParts(n: Numbers): fc.Arbitrary<SimCommand>[] {
  return [
    fc.record({
      do: fc.constant('loosen'),
      joint: fc.constantFrom(...jointIds),
      to: fc.constantFrom('slack', 'off'),
      backup: yes,
    }),
    fc.record(
      {
        do: fc.constant('tighten'),
        joint: fc.constantFrom(...jointIds),
        torque: n.torque,
        backup: yes,
        newWasher: yes,
      },
      { requiredKeys: ['do', 'joint', 'torque', 'backup'] },
    ),
    fc.record(
      { do: fc.constant('remove'), part: fc.constantFrom(...partIds), held: yes, guidePin: yes },
      { requiredKeys: ['do', 'part'] },
    ),
    fc.record(
      {
        do: fc.constant('fit'),
        part: fc.constantFrom(...partIds),
        held: yes,
        guidePin: yes,
        turned: yes,
        thickness: n.thickness,
        wet: yes,
      },
      { requiredKeys: ['do', 'part'] },
    ),
    fc.record({ do: fc.constant('cover'), opening: fc.constantFrom(...openingIds), on: yes }),
    fc.record({
      do: fc.constant('clean'),
      what: fc.constantFrom(...cleanIds),
      with: fc.constantFrom('brush', 'swab', 'rag'),
    }),
    fc.constant<SimCommand>({ do: 'orderPair' }),
  ];
}

/** Commands on the loose pump. */
function onPump(n: Numbers): fc.Arbitrary<SimCommand>[] {
  return [
    fc.record({ do: fc.constant('placePump'), on: fc.constantFrom(...restIds), camUp: yes }),
    fc.record({
      do: fc.constant('strike'),
      target: fc.constantFrom(...strikeTargets),
      hammer: fc.constantFrom(...hammerIds),
      speed: n.speed,
      block: fc.constantFrom('wood', 'none'),
    }),
    fc.record({
      do: fc.constant('pushPin'),
      with: fc.constantFrom(...pinToolIds),
      towards: fc.constantFrom('stop', 'full'),
      force: n.force,
    }),
    fc.record({
      do: fc.constant('pushPlunger'),
      towards: fc.constantFrom('cam', 'outlet'),
      force: n.force,
      twist: n.twist,
      seconds: n.seconds,
    }),
    fc.constant<SimCommand>({ do: 'grasp', part: 'plunger' }),
    fc.record({ do: fc.constant('handTo'), travel: n.travel, twist: n.twist }),
    fc.constant<SimCommand>({ do: 'letGo' }),
    fc.record({ do: fc.constant('soak'), with: fc.constantFrom(...solventIds) }),
  ];
}

/** Any command of the set, with numbers drawn from `n`. */
export function anyCommand(n: Numbers): fc.Arbitrary<SimCommand> {
  return fc.oneof(
    { weight: 3, arbitrary: fc.oneof(...onEngine(n)) },
    { weight: 3, arbitrary: fc.oneof(...onParts(n)) },
    { weight: 3, arbitrary: fc.oneof(...onPump(n)) },
  );
}

const offEngine: SimCommand[] = [
  { do: 'setTap', open: false },
  { do: 'remove', part: 'windowCover' },
  { do: 'loosen', joint: 'pipeAtPump', to: 'off', backup: true },
  { do: 'loosen', joint: 'pipeAtInjector', to: 'off', backup: true },
  { do: 'remove', part: 'pipe' },
  { do: 'loosen', joint: 'holder', to: 'slack', backup: true },
  { do: 'loosen', joint: 'hoseClip', to: 'off', backup: true },
  { do: 'remove', part: 'hose' },
  { do: 'loosen', joint: 'pumpNut1', to: 'off', backup: true },
  { do: 'loosen', joint: 'pumpNut2', to: 'off', backup: true },
  { do: 'remove', part: 'pump', guidePin: true },
];

const opened: SimCommand[] = [
  ...offEngine,
  { do: 'loosen', joint: 'holder', to: 'off', backup: true },
  { do: 'remove', part: 'holder' },
  { do: 'remove', part: 'valveSpring' },
  { do: 'remove', part: 'valve' },
];

const stripped: SimCommand[] = [
  ...opened,
  { do: 'remove', part: 'retainer', held: true },
  { do: 'remove', part: 'cup' },
  { do: 'remove', part: 'returnSpring' },
  { do: 'remove', part: 'plunger' },
];

const running: SimCommand[] = [
  { do: 'moveThrottle', to: 1 },
  { do: 'holdDecompressor', held: true },
  { do: 'pullCord', effort: 'firm', letGoAt: 0.6 },
];

/** Ways into the job from which chance alone would seldom start. */
export const preludes: Record<string, readonly SimCommand[]> = {
  fresh: [],
  running,
  bleeding: [
    { do: 'loosen', joint: 'pipeAtInjector', to: 'slack', backup: true },
    { do: 'holdDecompressor', held: true },
    { do: 'pullCord', effort: 'firm', letGoAt: null },
  ],
  offEngine,
  opened,
  stripped,
};
