import { useState } from 'react';
import setText from '../../models/bench-set/set.json?raw';
import { problemLine } from '../jobs/problems.ts';
import { readSet } from '../jobs/readSet.ts';
import { BookPage } from '../panels/book/BookPage.tsx';
import type { BookContents } from '../panels/book/book.ts';
import { runCheck } from '../sim/laws/check.ts';
import { laws, runLaw } from '../sim/laws/registry.ts';
import { readChecks } from './bookChecks.ts';
import { bookInputs } from './bookInputs.ts';

function contents(): BookContents {
  const set = readSet(setText);
  if (!set.ok) throw new Error(set.problems.map(problemLine).join('\n'));
  return {
    setName: set.value.name,
    laws,
    checks: readChecks(),
    points: bookInputs(set.value),
    runLaw,
    runCheck,
  };
}

/** The Bench book with its laws, its checks and the set's own figures. */
export function BookPlace() {
  const [book] = useState(contents);
  return <BookPage book={book} />;
}
