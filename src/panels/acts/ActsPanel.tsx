import { useEffect, useRef, useState } from 'react';
import { thingsFor, toolInHand, toolWords } from '../tools/tools.ts';
import { useIsNarrow } from '../useIsNarrow.ts';
import { useJob, useView } from '../useJob.ts';
import type { Thing } from './act.ts';
import { groups, thingFor } from './catalogue.ts';
import { ThingItem } from './ThingItem.tsx';
import './acts.css';

const TOOL_GROUP = 'tool';

/** The whole set as a list: groups, things, and what can be done to each. */
export function ActsPanel() {
  const { session, core } = useJob();
  const inHand = toolInHand(useView((view) => view.inHand));
  const selected = useView((view) => view.selected);
  const [groupId, setGroupId] = useState<string | null>(null);
  const [openThing, setOpenThing] = useState<string | null>(null);
  const isNarrow = useIsNarrow();

  const tabs = [
    ...(inHand === null
      ? []
      : [{ id: TOOL_GROUP, name: `With the ${toolWords[inHand].name.toLowerCase()}` }]),
    ...groups,
  ];
  const shown = groupId ?? (isNarrow ? 'place' : null);
  const things: readonly Thing[] =
    shown === TOOL_GROUP && inHand !== null
      ? thingsFor(inHand, core, session.sim()).map(({ thing }) => thing)
      : (groups.find(({ id }) => id === shown)?.things ?? []);

  const chosen = openThing === null ? null : thingFor(openThing);

  useOnChange(selected, (name) => {
    const found = name === null ? null : thingFor(name);
    if (found === null) return;
    setOpenThing(found.thing.id);
    // What was picked in the list that is open already needs no other list.
    const isListed = things.some(({ id }) => id === found.thing.id);
    if (!isListed && (groupId !== null || isNarrow)) setGroupId(found.group.id);
  });
  useOnChange(inHand, (tool) => {
    if (tool !== null && groupId !== null) setGroupId(TOOL_GROUP);
    if (tool === null && groupId === TOOL_GROUP) setGroupId(null);
  });

  return (
    <section className="acts" aria-label="Everything that can be acted on">
      <ul className="acts-groups">
        {tabs.map((tab) => (
          <li key={tab.id}>
            <button
              type="button"
              className="group-tab"
              aria-expanded={shown === tab.id}
              onClick={() => setGroupId(shown === tab.id && !isNarrow ? null : tab.id)}
            >
              {tab.name}
            </button>
          </li>
        ))}
        {shown === null && chosen !== null ? (
          <li className="group-chosen">
            <button type="button" className="button" onClick={() => setGroupId(chosen.group.id)}>
              Acts: {chosen.thing.name}
            </button>
          </li>
        ) : null}
      </ul>
      {shown === null ? null : (
        <div className="acts-body">
          <ul className="things" aria-label={tabs.find(({ id }) => id === shown)?.name}>
            {things.map((thing) => (
              <ThingItem
                key={`${shown} ${thing.id}`}
                thing={thing}
                isOpen={openThing === thing.id}
                onOpen={() => {
                  setOpenThing(openThing === thing.id && isNarrow ? null : thing.id);
                  session.look({ selected: thing.aliases[0] ?? thing.id, view: thing.view });
                }}
                tool={shown === TOOL_GROUP ? inHand : null}
              />
            ))}
          </ul>
          {things.some(({ id }) => id === openThing) ? null : (
            <p className="acts-empty">Choose what to act on: its acts are shown here.</p>
          )}
        </div>
      )}
    </section>
  );
}

/** Calls back when a value has changed since the last render, not on the first. */
function useOnChange<T>(value: T, onChange: (value: T) => void): void {
  const last = useRef(value);
  useEffect(() => {
    if (last.current === value) return;
    last.current = value;
    onChange(value);
  });
}
