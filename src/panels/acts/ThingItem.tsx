import { type RefObject, useEffect, useId, useRef } from 'react';
import type { ToolId } from '../../jobs/tools.ts';
import { presetFor, takesTool } from '../tools/tools.ts';
import { useFact, useJob } from '../useJob.ts';
import { ActForm } from './ActForm.tsx';
import { initialValues, type Thing } from './act.ts';

/** One thing of the set: its name, its state as plain to see and, when open, its acts. */
export function ThingItem({
  thing,
  isOpen,
  onOpen,
  tool,
}: {
  thing: Thing;
  isOpen: boolean;
  onOpen: () => void;
  tool: ToolId | null;
}) {
  const id = useId();
  const state = useFact(thing.state);
  const name = useRef<HTMLButtonElement>(null);
  return (
    <li className="thing">
      <button
        ref={name}
        type="button"
        className="thing-name"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={onOpen}
      >
        <span>{thing.name}</span>
        <span className="thing-state">{state}</span>
      </button>
      {isOpen ? (
        <div id={id} className="thing-acts">
          <ActList thing={thing} tool={tool} name={name} />
        </div>
      ) : null}
    </li>
  );
}

function ActList({
  thing,
  tool,
  name,
}: {
  thing: Thing;
  tool: ToolId | null;
  name: RefObject<HTMLButtonElement | null>;
}) {
  const { session, core } = useJob();
  const listed = useFact((sim) =>
    thing.acts
      .filter((act) => act.shown?.(sim) ?? true)
      .filter((act) => tool === null || takesTool(act, tool, core, sim))
      .map((act) => act.id)
      .join(' '),
  );
  const before = useRef(listed);
  useEffect(() => {
    if (before.current === listed) return;
    before.current = listed;
    // An act that was done may leave the list with the focus on it: the thing itself takes the focus over.
    if (document.activeElement === document.body) name.current?.focus();
  }, [listed, name]);
  const acts = thing.acts.filter((act) => listed.split(' ').includes(act.id));
  // A tool in the hand sets the choice that stands for it, such as which hammer.
  const preset = (act: Thing['acts'][number]) =>
    tool === null ? null : presetFor(act, tool, core, session.sim());
  return acts.map((act) => (
    <ActForm key={`${act.id} ${tool ?? ''}`} act={act} start={{ ...initialValues(act), ...preset(act) }} />
  ));
}
