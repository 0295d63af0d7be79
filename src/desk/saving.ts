import { strToU8, zipSync } from 'fflate';
import { saveFile } from '../packages/saveFile.ts';
import { quotedField } from '../session/csv.ts';
import type { SentWork } from './WorksTable.tsx';

/** Letters of a name that every file system takes. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40) || 'work';

const titled = (works: readonly SentWork[]): string => plain(works[0]?.work.name ?? 'work');

/** Rows as CSV. */
export const tableText = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map(quotedField).join(',')}\r\n`).join('');

/** A table of who gets which link, as CSV. */
export function tableOfLinks(works: readonly SentWork[]): string {
  const rows = works.map(({ who, work, address }) => [who, work.scenario.title, work.due ?? '', address]);
  return tableText([['for', 'job', 'last day', 'link'], ...rows]);
}

/** Saves the table of links. */
export function saveLinks(works: readonly SentWork[]): void {
  saveFile(`${titled(works)}-links.csv`, tableOfLinks(works), 'text/csv');
}

/** Saves a file for each learner, in one archive where there are several. */
export function saveWorks(works: readonly SentWork[]): void {
  const files = works.map(({ who, packed }, at) => [`${at + 1}-${plain(who)}.freestroke`, packed] as const);
  const [first] = files;
  if (files.length === 1 && first !== undefined) {
    saveFile(`${titled(works)}.freestroke`, first[1], 'text/plain');
    return;
  }
  const archive = zipSync(Object.fromEntries(files.map(([name, text]) => [name, strToU8(text)])));
  saveFile(`${titled(works)}.zip`, archive, 'application/zip');
}
