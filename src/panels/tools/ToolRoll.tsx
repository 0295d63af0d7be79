import { useState } from 'react';
import { useJob, useView } from '../useJob.ts';
import { toolInHand, toolWords } from './tools.ts';
import './tools.css';

/** The tools on the roll; one is in the hand at a time. */
export function ToolRoll() {
  const { session } = useJob();
  const inHand = toolInHand(useView((view) => view.inHand));
  const [isOpen, setOpen] = useState(true);
  const roll = session.scenario.tools.filter((tool) => tool !== 'hand');
  return (
    <section className="roll" aria-labelledby="roll-title">
      <h2 className="roll-head">
        <button type="button" id="roll-title" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          <span>Tool roll</span>
          <span className="roll-now">{inHand === null ? 'bare hand' : toolWords[inHand].name}</span>
        </button>
      </h2>
      {isOpen ? (
        <>
          <p className="roll-use">
            {inHand === null ? 'Pick one up to see what it works on.' : toolWords[inHand].use}
          </p>
          <ul className="tools">
            {roll.map((tool) => (
              <li key={tool}>
                <button
                  type="button"
                  className="tool"
                  aria-pressed={inHand === tool}
                  onClick={() => session.look({ inHand: inHand === tool ? 'hand' : tool })}
                >
                  {toolWords[tool].name}
                </button>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </section>
  );
}
