import { type Problem, problemLine } from '../jobs/problems.ts';
import type { CommandResult } from './law.ts';

/** Exit code 2 with one line a problem; about: the file they are in, when it is not plain from the call. */
export function failed(problems: readonly Problem[], about = ''): CommandResult {
  const err = problems.map((problem) => {
    const path = about === '' ? problem.path : `${about} ${problem.path}`;
    return problemLine({ ...problem, path });
  });
  return { code: 2, out: [], err };
}

/** Exit code 0 with lines for standard output. */
export const succeeded = (...out: string[]): CommandResult => ({ code: 0, out, err: [] });
