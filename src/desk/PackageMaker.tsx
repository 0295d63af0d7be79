import { useState } from 'react';
import { makePackage, type PackageFormat } from '../packages/package.ts';
import { saveFile } from '../packages/saveFile.ts';
import type { SentWork } from './WorksTable.tsx';

const formats: readonly { readonly id: PackageFormat; readonly name: string }[] = [
  { id: 'scorm2004', name: 'SCORM 2004, 4th edition' },
  { id: 'scorm12', name: 'SCORM 1.2' },
  { id: 'cmi5', name: 'cmi5' },
];

/** The built program, file by file, from where this page itself was loaded. Rejects with the file that did not come. */
async function builtFiles(tell: (share: number) => void): Promise<Map<string, Uint8Array>> {
  const fetched = async (path: string): Promise<Response> => {
    const answer = await fetch(new URL(path, document.baseURI));
    if (!answer.ok) throw new Error(`${path} did not come (${answer.status})`);
    return answer;
  };
  const list = (await (await fetched('files.json')).json()) as unknown;
  if (!Array.isArray(list)) throw new Error('files.json is not a list of files');
  const files = new Map<string, Uint8Array>();
  for (const path of list) {
    if (typeof path !== 'string') continue;
    files.set(path, new Uint8Array(await (await fetched(path)).arrayBuffer()));
    tell(files.size / list.length);
  }
  return files;
}

type State =
  | { readonly at: 'nothing' }
  | { readonly at: 'working'; readonly share: number }
  | { readonly at: 'said'; readonly words: string };

/** Makes a package of the works for a learning system, in the page. */
export function PackageMaker({ works }: { works: readonly SentWork[] }) {
  const [format, setFormat] = useState<PackageFormat>('scorm2004');
  const [state, setState] = useState<State>({ at: 'nothing' });
  const make = async () => {
    setState({ at: 'working', share: 0 });
    try {
      const files = await builtFiles((share) => setState({ at: 'working', share }));
      const title = works[0]?.work.name ?? 'Freestroke';
      const bytes = makePackage(files, works, title, format);
      saveFile(`${title.toLowerCase().replace(/[^a-z0-9]+/g, '-')}-${format}.zip`, bytes, 'application/zip');
      setState({ at: 'said', words: `Saved: ${works.length} units, ${(bytes.length / 1e6).toFixed(1)} MB.` });
    } catch (problem) {
      const why = problem instanceof Error ? problem.message : String(problem);
      setState({ at: 'said', words: `No package was made: ${why}.` });
    }
  };
  return (
    <div className="desk-package">
      <h3>For a learning system</h3>
      <p>
        One package holds the program and a unit for each work. The system itself says who did it and keeps
        the marks.
      </p>
      <div className="desk-tools">
        <label className="desk-field">
          <span>Standard</span>
          <select
            value={format}
            onChange={({ target }) =>
              setFormat(formats.find(({ id }) => id === target.value)?.id ?? 'scorm2004')
            }
          >
            {formats.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="button"
          onClick={() => void make()}
          aria-disabled={state.at === 'working'}
        >
          Make a package
        </button>
        {state.at === 'working' ? <progress max={1} value={state.share} aria-label="Packing" /> : null}
      </div>
      <p role="status">{state.at === 'said' ? state.words : ''}</p>
    </div>
  );
}
