import { moments, moving, type Placed, standing } from './assembly.ts';
import { fitOf, fits, ROUNDING } from './fits.ts';
import type { Solid, Solids } from './solids.ts';

/** What is wrong with single solids, each in a plain sentence; empty when all are closed and as pierced as drawn. */
export function flawsOf(solids: Solids): string[] {
  return solids.all.flatMap(flaws);
}

function flaws({ id, shape, genus }: Solid): string[] {
  const status = shape.status();
  if (status !== 'NoError' || shape.isEmpty())
    return [
      `The solid ${id} is not watertight: the kernel says ${status === 'NoError' ? 'it is empty' : status}.`,
    ];
  const pieces = shape.decompose().length;
  if (pieces !== 1) return [`The solid ${id} falls into ${pieces} pieces that do not hang together.`];
  if (shape.genus() !== genus)
    return [`The solid ${id} has ${shape.genus()} ways through it, but ${genus} are drawn.`];
  return [];
}

/** Parts that overlap by more than their fit allows, at every moment tried, each in a plain sentence. */
export function clashesOf(solids: Solids): string[] {
  const still = standing(solids);
  return [
    ...clashesBetween(still, still).map((clash) => sentence(clash, 'as they stand')),
    ...moments(solids.def).flatMap((moment) => {
      const parts = moving(solids, moment);
      const when = `with the cam at ${moment.camAngle.toFixed(2)} rad and the plunger turned ${moment.turn.toFixed(2)} rad`;
      return clashesBetween(parts, [...parts, ...still]).map((clash) => sentence(clash, when));
    }),
  ];
}

/** Two parts that share more volume than their fit allows, m3. */
export type Clash = {
  readonly a: string;
  readonly b: string;
  readonly volume: number;
  readonly allowed: number;
};

/** Every part of one list against every other of a second, each pair once. */
export function clashesBetween(parts: readonly Placed[], others: readonly Placed[]): Clash[] {
  return parts.flatMap((a) => {
    const own = parts.indexOf(a);
    return others.flatMap((b): Clash[] => {
      const known = parts.indexOf(b);
      if ((known >= 0 && known <= own) || !boxesMeet(a, b)) return [];
      const volume = a.shape.intersect(b.shape).volume();
      const allowed = fitOf(a.name, b.name)?.overlap ?? ROUNDING;
      return volume > allowed ? [{ a: a.name, b: b.name, volume, allowed }] : [];
    });
  });
}

/** Parts that must meet and do not, with the valve shut, each in a plain sentence. */
export function gapsOf(solids: Solids): string[] {
  const still = standing(solids);
  return moments(solids.def)
    .filter(({ valveLift }) => valveLift === 0)
    .flatMap((moment, i) => {
      const parts = moving(solids, moment);
      const others = i === 0 ? [...parts, ...still] : parts;
      return gapsBetween(others, [...parts, ...still]).map(
        ({ parts: [a, b], gap }) =>
          `The parts ${a} and ${b} do not meet with the cam at ${moment.camAngle.toFixed(2)} rad: they stand more than ${(gap * 1000).toPrecision(2)} mm apart.`,
      );
    });
}

/** Fits whose two parts are both there and stand farther apart than it allows, wherever each of them is. */
export function gapsBetween(
  parts: readonly Placed[],
  others: readonly Placed[],
): { parts: readonly [string, string]; gap: number }[] {
  const called = (list: readonly Placed[], name: string): Placed[] =>
    list.filter((part) => part.name.split(' ')[0] === name);
  return fits.flatMap(({ parts: [a, b], gap }) => {
    if (gap === undefined) return [];
    const pairs = [
      ...called(parts, a).flatMap((one) => called(others, b).map((two) => [one, two] as const)),
      ...called(parts, b).flatMap((one) => called(others, a).map((two) => [one, two] as const)),
    ];
    const meets = pairs.some(([one, two]) => one.shape.minGap(two.shape, gap * 2) <= gap);
    return pairs.length === 0 || meets ? [] : [{ parts: [a, b] as const, gap }];
  });
}

function boxesMeet(a: Placed, b: Placed): boolean {
  const one = a.shape.boundingBox();
  const two = b.shape.boundingBox();
  const reach = (from: readonly number[], to: readonly number[]): boolean =>
    from.every((low, n) => low <= (to[n] ?? low));
  return reach(one.min, two.max) && reach(two.min, one.max);
}

function sentence({ a, b, volume, allowed }: Clash, when: string): string {
  return `The parts ${a} and ${b} overlap by ${inCubicMm(volume)} mm3 ${when}; their fit allows ${inCubicMm(allowed)}.`;
}

function inCubicMm(volume: number): string {
  return (volume * 1e9).toPrecision(2);
}
