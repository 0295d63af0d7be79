import { posix } from 'node:path';
import { importsIn, lineOf, type Named, namesIn, parse, topLevelVariables } from './syntax.ts';

/** One source file; path from the project's top, with forward slashes. */
export type SourceFile = { readonly path: string; readonly text: string };

/** Packages of package.json: what the page may use, and what only building and the terminal may use. */
export type Packages = { readonly run: ReadonlySet<string>; readonly build: ReadonlySet<string> };

const CORE = ['sim', 'jobs', 'marking', 'workers', 'session'];
const TO_SESSION = ['laws', ...CORE];

/** Folder of src -> the other folders that it may import. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  laws: [],
  sim: ['laws'],
  jobs: ['sim', 'laws'],
  marking: ['jobs', 'sim', 'laws'],
  workers: ['marking', 'jobs', 'sim', 'laws'],
  session: ['workers', 'marking', 'jobs', 'sim', 'laws'],
  solids: [],
  bench: ['session'],
  panels: ['session'],
  packages: TO_SESSION,
  desk: [...TO_SESSION, 'packages'],
  cli: [...TO_SESSION, 'packages', 'solids'],
  app: [...TO_SESSION, 'solids', 'bench', 'panels', 'desk', 'packages', 'cli'],
};

/** Folders that may also name the types of everything below the session. */
const TYPES_OF_CORE = ['bench', 'panels'];

/** Files that are only lists of words and the types made of them: these may be read wherever the types may. */
const WORD_LISTS = ['src/sim/set/commands.ts', 'src/jobs/causes.ts'];

/** Folder of data -> the folders of src that may read it. */
const MAY_READ: Record<string, readonly string[]> = {
  models: [
    'sim',
    'jobs',
    'workers',
    'session',
    'solids',
    'bench',
    'panels',
    'desk',
    'packages',
    'cli',
    'app',
  ],
  scenarios: ['jobs', 'workers', 'session', 'panels', 'desk', 'packages', 'cli', 'app'],
};

/** The only packages that these folders may use; folders not listed are held by the rules below alone. */
const MAY_USE: Record<string, RegExp> = {
  laws: /^$/,
  sim: /^valibot$/,
  jobs: /^valibot$/,
  marking: /^$/,
  workers: /^$/,
  session: /^(valibot|zustand\/vanilla|idb|fflate|@noble\/hashes\/\w+\.js)$/,
  solids: /^(manifold-3d|vite|@gltf-transform\/(core|extensions)|meshoptimizer)$/,
};
const MATHS = 'src/sim/laws/maths.ts';

const WITH_REACT = ['app', 'bench', 'panels', 'desk'];
const REACT = /^(react|react-[\w-]+|@react-(?!three)\w+|@use-gesture|zustand\/react|wouter)(\/|$)|^zustand$/;
const THREE = /^(three|three-[\w-]+|@react-three)(\/|$)/;
const WITH_NODE = ['cli', 'solids', 'packages'];

/** Folders whose results must be the same bits wherever they run. */
const SAME_EVERYWHERE = ['laws', ...CORE];
const SAME_MATHS =
  /^(sqrt|abs|min|max|floor|ceil|round|trunc|sign|imul|fround|clz32|PI|E|LN2|LN10|SQRT2|SQRT1_2)$/;
const SURROUNDINGS =
  /^(Date|performance|window|document|globalThis|self|navigator|crypto|structuredClone|TextEncoder|TextDecoder|Intl|setTimeout|setInterval|requestAnimationFrame|require)$/;
const STORAGE_TOO = /^(localStorage|sessionStorage|indexedDB|fetch)$/;
const LOCALE = /^(toLocaleString|toLocaleUpperCase|toLocaleLowerCase|localeCompare)$/;

const LONGEST = 300;

/** Folder of src that a path belongs to (`laws` is told apart from the rest of `sim`), or undefined. */
export function folderOf(path: string): string | undefined {
  if (path.startsWith('src/sim/laws/')) return 'laws';
  return /^src\/([^/]+)\//.exec(path)?.[1];
}

/** Every breach of the house rules in one file of src, as `path:line what is wrong`. */
export function breachesIn(file: SourceFile, packages: Packages): string[] {
  const folder = folderOf(file.path);
  if (folder === undefined || MAY_IMPORT[folder] === undefined) {
    return [`${file.path}:1 is in no folder that DEVELOPERS.md knows`];
  }
  const tree = parse(file.path, file.text);
  const found: Named[] = [
    ...importsIn(tree).flatMap((item) =>
      importBreach(file.path, folder, item.name, item.isType, packages).map((name) => ({
        name,
        at: item.at,
      })),
    ),
    ...(SAME_EVERYWHERE.includes(folder) ? samenessBreaches(folder, tree) : []),
  ];
  return [
    ...fileBreaches(file, folder),
    ...found.map(({ name, at }) => `${file.path}:${lineOf(file.text, at)} ${name}`),
  ];
}

/** Breaches that any TypeScript file can commit, tests included: its length. */
export function lengthBreach(file: SourceFile): string[] {
  const lines = file.text.trimEnd().split('\n').length;
  return lines > LONGEST ? [`${file.path}:${LONGEST} has ${lines} lines; ${LONGEST} is the most`] : [];
}

function fileBreaches(file: SourceFile, folder: string): string[] {
  const name = posix.basename(file.path);
  const breaches = lengthBreach(file);
  if (name.endsWith('.tsx') && !WITH_REACT.includes(folder))
    breaches.push(`${file.path}:1 ${folder} may not use React`);
  const isNamedWell =
    file.path === 'src/app/main.tsx' || /^([a-z][A-Za-z0-9]*(\.d)?\.ts|[A-Z][A-Za-z0-9]*\.tsx)$/.test(name);
  if (!isNamedWell) breaches.push(`${file.path}:1 should be named like camelCase.ts or PascalCase.tsx`);
  return breaches;
}

function importBreach(
  path: string,
  folder: string,
  name: string,
  isType: boolean,
  packages: Packages,
): string[] {
  if (name === '') return ['imports something that is not a plain string'];
  if (WORD_LISTS.includes(path) && !isType) return ['is a list of words and may import only types'];
  if (name.startsWith('.')) return relativeBreach(path, folder, name, isType);
  if (name.startsWith('/') || name.startsWith('#') || name.startsWith('@/')) {
    return [`imports ${name}: only relative paths and packages`];
  }
  return packageBreach(path, folder, name, packages);
}

function relativeBreach(path: string, folder: string, name: string, isType: boolean): string[] {
  const target = posix.normalize(posix.join(posix.dirname(path), name.replace(/\?.*$/, '')));
  const readers = MAY_READ[target.split('/')[0] ?? ''];
  if (readers !== undefined) return readers.includes(folder) ? [] : [`${folder} may not read ${target}`];
  const to = folderOf(target);
  if (to === undefined) return [`imports ${target}, which is outside src`];
  if (to === folder || MAY_IMPORT[folder]?.includes(to)) return [];
  if (TYPES_OF_CORE.includes(folder) && TO_SESSION.includes(to)) {
    return isType || WORD_LISTS.includes(target)
      ? []
      : [`${folder} may import only types from ${to} (import type)`];
  }
  return [`${folder} may not import ${to}`];
}

function packageBreach(path: string, folder: string, name: string, packages: Packages): string[] {
  if (name.startsWith('node:')) return WITH_NODE.includes(folder) ? [] : [`${folder} may not use ${name}`];
  const owner = name.startsWith('@') ? name.split('/').slice(0, 2).join('/') : (name.split('/')[0] ?? name);
  const isDeclared = packages.run.has(owner) || (WITH_NODE.includes(folder) && packages.build.has(owner));
  if (!isDeclared) return [`${name} is not among the dependencies in package.json`];
  if (THREE.test(name)) return folder === 'bench' ? [] : [`${folder} may not use three (${name})`];
  if (REACT.test(name)) return WITH_REACT.includes(folder) ? [] : [`${folder} may not use React (${name})`];
  if (path === MATHS && name.startsWith('@stdlib/')) return [];
  const allowed = MAY_USE[folder];
  return allowed === undefined || allowed.test(name) ? [] : [`${folder} may not use the package ${name}`];
}

function samenessBreaches(folder: string, tree: ReturnType<typeof parse>): Named[] {
  const names = namesIn(tree);
  const maths = names.maths
    .filter(({ name }) => !SAME_MATHS.test(name))
    .map(({ name, at }) => ({
      name:
        name === 'random'
          ? 'uses Math.random'
          : `uses ${name === '' ? 'Math as a value' : `Math.${name}`}: take it from ${MATHS}`,
      at,
    }));
  const surroundings = names.free
    .filter(({ name }) => SURROUNDINGS.test(name) || (folder !== 'session' && STORAGE_TOO.test(name)))
    .map(({ name, at }) => ({ name: `${folder} may not know ${name}`, at }));
  const locale = names.members
    .filter(({ name }) => LOCALE.test(name))
    .map(({ name, at }) => ({ name: `uses ${name}, which depends on the reader's language`, at }));
  const powers = names.powers.map(({ at }) => ({
    name: `uses the ** operator: multiply, or take pow from ${MATHS}`,
    at,
  }));
  const lets = topLevelVariables(tree).map(({ name, at }) => ({
    name: `keeps state in a module-level ${name}`,
    at,
  }));
  return [...maths, ...surroundings, ...locale, ...powers, ...lets];
}
