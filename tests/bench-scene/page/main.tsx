import { Suspense } from 'react';
import { createRoot } from 'react-dom/client';
import setText from '../../../models/bench-set/set.json?raw';
import file from '../../../scenarios/lambing-shed-lights.json';
import { Bench } from '../../../src/bench/Bench.tsx';
import { readSet } from '../../../src/jobs/readSet.ts';
import { scenarioFrom } from '../../../src/jobs/scenario.ts';
import { createSession } from '../../../src/session/session.ts';

// The bench by itself on a real job, for looking at it: the session is reachable from the console and the tests.
const set = readSet(setText);
const scenario = scenarioFrom(file);
const root = document.getElementById('root');
if (!set.ok || !scenario.ok || root === null) throw new Error('the page cannot open its job');
const session = createSession({ def: set.value, scenario: scenario.value, seed: 1, mode: 'practice' });
Object.assign(globalThis, { session });
createRoot(root).render(
  <Suspense fallback={null}>
    <Bench session={session} />
  </Suspense>,
);
