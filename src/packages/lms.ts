/** A part of the mark as a learning system is told it. */
export interface PartReport {
  readonly id: string;
  /** 0..100. */
  readonly score: number;
}

/** What finished work came to, as a learning system is told it. */
export interface LmsReport {
  /** 0..100. */
  readonly total: number;
  readonly passed: boolean;
  /** 0..100; what a system that judges by the score itself was told to ask for. */
  readonly passMark: number;
  readonly parts: readonly PartReport[];
}

/** A learning system that started this page. Times are seconds of this sitting. */
export interface Lms {
  readonly kind: 'scorm12' | 'scorm2004' | 'cmi5';
  /** Longest text that it keeps between sittings, characters. */
  readonly room: number;
  /** Text kept in an earlier sitting; empty where there is none. */
  saved(): string;
  /** Keeps a text for a later sitting; false, and nothing changed, where it is longer than there is room. */
  keep(text: string, seconds: number): boolean;
  /** Tells what finished work came to; once. */
  report(report: LmsReport, seconds: number): void;
  /** Ends the sitting, to be gone on with unless the work was reported; settles once that is told. A second call does nothing. */
  close(seconds: number): Promise<void>;
  /** Where the learner goes when the work is left; null where the system sees to that itself. */
  readonly returnTo: string | null;
  /** Whether a sitting whose page is gone can be gone on with by the same page loaded anew; it must then not be closed. */
  outlastsPage(): boolean;
  /** What the system refused, in its own codes; empty when all went well. */
  readonly refusals: readonly string[];
}

const NEAR = 0.01;

/**
 * The score that is told, 0..100 to a hundredth. Work that failed through an act that stops the pass must not stand at or
 * above the pass mark, or a system that judges by the score would pass it.
 */
export function scoreToTell({
  total,
  passed,
  passMark,
}: Pick<LmsReport, 'total' | 'passed' | 'passMark'>): number {
  const score = passed ? Math.max(total, passMark) : Math.min(total, passMark - NEAR);
  return Math.round(100 * Math.min(100, Math.max(0, score))) / 100;
}

/** A score of 0..100 as a share of one, with the four digits that systems keep. */
export const scaledScore = (score: number): number => Math.round(score * 100) / 10_000;

/** Frames looked through for a system's interface. */
const DEEPEST = 20;

/** One frame as far as it can be seen: another origin's frame shows nothing. */
function named(frame: Window, name: string): unknown {
  try {
    return Reflect.get(frame, name);
  } catch {
    return undefined;
  }
}

function upwards(from: Window, name: string): unknown {
  let frame = from;
  for (let depth = 0; depth < DEEPEST; depth += 1) {
    const found = named(frame, name);
    if (typeof found === 'object' && found !== null) return found;
    if (frame.parent === frame) return undefined;
    frame = frame.parent;
  }
  return undefined;
}

/** A system's interface by its name, from the frames around this one, then from around the one that opened it. */
export function findInterface(page: Window, name: string): unknown {
  const opener = named(page, 'opener') as Window | null | undefined;
  return upwards(page, name) ?? (opener ? upwards(opener, name) : undefined);
}
