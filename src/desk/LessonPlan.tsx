import type { Plan } from './plan.ts';

interface Part {
  readonly minutes: number;
  readonly what: string;
}

/** A first lesson for a class that has never had the pump in its hands; times are our judgement. */
const lesson: readonly Part[] = [
  {
    minutes: 5,
    what: 'Together, at the projector: what stands on the bench, and what can hurt (fuel through the skin, the cord’s kick-back, a set that runs away).',
  },
  { minutes: 8, what: 'Each alone: the practice piece “Stuck or free?”, three rounds.' },
  {
    minutes: 12,
    what: 'Together: “Lambing shed lights”, guided, up to naming the cause. Ask before each check what it could show.',
  },
  { minutes: 15, what: 'Each alone: a job like it, dealt, in practice. Hints that point to the place.' },
  { minutes: 5, what: 'Together: check what came back, and talk over the commonest error.' },
];

/** The plan's last part as the form has it. */
const asPlan: Partial<Plan> = {
  name: 'First lesson',
  pattern: 'lambing-shed-lights',
  kind: 'dealt',
  mode: 'practice',
  hints: 1,
  count: 20,
};

/** A lesson that is ready to be held, and a button that fills in the form for it. */
export function LessonPlan({ onTake }: { onTake: (plan: Partial<Plan>) => void }) {
  const total = lesson.reduce((sum, { minutes }) => sum + minutes, 0);
  return (
    <details className="desk-proof">
      <summary>A first lesson of {total} minutes, ready to be held</summary>
      <ol className="desk-lesson">
        {lesson.map(({ minutes, what }) => (
          <li key={what}>
            <b className="figures">{minutes} min</b> {what}
          </li>
        ))}
      </ol>
      <p>
        <button type="button" className="button" onClick={() => onTake(asPlan)}>
          Fill in the form for its fourth part
        </button>
      </p>
    </details>
  );
}
