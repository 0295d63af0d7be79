import { strFromU8, strToU8, zipSync } from 'fflate';
import type { Assignment } from '../session/assignment.ts';
import { type Contents, courseStructure, escaped, manifest12, manifest2004, type Unit } from './manifests.ts';
import { WORK_META } from './workMeta.ts';

export const packageFormats = ['scorm12', 'scorm2004', 'cmi5'] as const;
export type PackageFormat = (typeof packageFormats)[number];

/** Work that goes into a package: what was set, and the text of its link. */
export interface PackagedWork {
  readonly work: Assignment;
  readonly packed: string;
}

/** Addresses of activities need a name space; the files of a package ask for nothing there. */
const BASE = 'https://freestroke.invalid/work';
const ENTRY = 'index.html';
/** What the page's security policy lets it ask, as it stands in the built page. */
const ASKS_ITSELF = /connect-src (?:'|&#39;)self(?:'|&#39;)/;

/** The page of a unit: the program's own page, told which work it is. cmi5 answers from an origin of its own. */
function pageFor(entry: string, packed: string, format: PackageFormat): string {
  const page = entry.replace(
    '<head>',
    `<head>\n    <meta name="${WORK_META}" content="${escaped(packed)}" />`,
  );
  return format === 'cmi5' ? page.replace(ASKS_ITSELF, (found) => `${found} http: https:`) : page;
}

/**
 * A package for a learning system as the bytes of a zip: the built program, a page for each work and the standard's
 * manifest. files: the built program by address. Throws RangeError where there is no work, or no page among the files.
 */
export function makePackage(
  files: ReadonlyMap<string, Uint8Array>,
  works: readonly PackagedWork[],
  title: string,
  format: PackageFormat,
): Uint8Array {
  const entry = files.get(ENTRY);
  if (entry === undefined) throw new RangeError(`files: no ${ENTRY} among them; build the program first`);
  if (works.length === 0) throw new RangeError('works: a package needs at least one');
  const text = strFromU8(entry);
  const units = works.map(
    ({ work }, at): Unit => ({
      id: `${at + 1}-${work.nonce}`,
      title: `${work.name}: ${work.scenario.title}`,
      page: `work-${at + 1}.html`,
      passMark: work.scenario.marking.passMark,
    }),
  );
  // the program's first page would offer other jobs than the one that is set
  const all = new Map([...files].filter(([path]) => path !== ENTRY));
  for (const [at, { packed }] of works.entries())
    all.set(`work-${at + 1}.html`, strToU8(pageFor(text, packed, format)));
  const id = `freestroke-${works[0]?.work.nonce}`;
  const contents: Contents = { id, title, units, files: [...all.keys()].sort() };
  if (format === 'scorm12') all.set('imsmanifest.xml', strToU8(manifest12(contents)));
  if (format === 'scorm2004') all.set('imsmanifest.xml', strToU8(manifest2004(contents)));
  if (format === 'cmi5') all.set('cmi5.xml', strToU8(courseStructure(contents, BASE)));
  return zipSync(Object.fromEntries(all), { level: 6, mtime: new Date(2026, 0, 1) });
}
