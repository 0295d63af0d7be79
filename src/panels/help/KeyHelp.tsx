import { useRef } from 'react';
import { benchKeys } from '../bench/useBenchKeys.ts';
import './help.css';

/** How to work by keyboard, in a panel of its own. */
export function KeyHelp() {
  const dialog = useRef<HTMLDialogElement>(null);
  return (
    <>
      <button type="button" className="button quiet" onClick={() => dialog.current?.showModal()}>
        Keys
      </button>
      <dialog ref={dialog} aria-labelledby="keys-title">
        <h2 id="keys-title">Keys</h2>
        <p>
          Everything can be reached with Tab and done with Enter: groups, things, and the acts of each. These
          single keys work only while the bench has the focus.
        </p>
        <table className="keys">
          <tbody>
            {benchKeys.map(({ keys, what }) => (
              <tr key={keys}>
                <th scope="row">
                  <kbd>{keys}</kbd>
                </th>
                <td>{what}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p>
          Holding the plunger, in the hand gauge: arrow keys kept down push, pull and twist at a steady rate.
        </p>
        <p>
          A gamepad, where one is connected: first button kept down grips the loose plunger and the left stick
          pushes and twists it; the right trigger pulls the cord, the harder the quicker; the left one holds
          the decompressor.
        </p>
        <form method="dialog">
          <button type="submit" className="button strong">
            Close
          </button>
        </form>
      </dialog>
    </>
  );
}
