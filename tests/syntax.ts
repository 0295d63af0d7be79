import { parseSync } from 'vite';

/** A name and where it stands, in characters from the file's start. */
export type Named = { readonly name: string; readonly at: number };

type Node = { readonly type: string; readonly start: number; readonly [key: string]: unknown };

/** Names that the rules care about, by the way they are used. */
export type Names = {
  /** Names that stand alone: variables, parameters, types. */
  readonly free: readonly Named[];
  /** Names after a dot. */
  readonly members: readonly Named[];
  /** Members of Math; an empty name where Math is used in any other way. */
  readonly maths: readonly Named[];
  /** The power operator. */
  readonly powers: readonly Named[];
};

/** Parses TypeScript or TSX; throws with the parser's own words when it cannot. */
export function parse(path: string, text: string): Node {
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors.map((error) => error.message).join('; ')}`);
  if (!isNode(program)) throw new Error(`${path}: the parser gave no tree`);
  return program;
}

/** Line number, from 1, of a place in a text. */
export function lineOf(text: string, at: number): number {
  return text.slice(0, at).split('\n').length;
}

/** Every module that a file names: import, export from, import(), import type, new URL(..., import.meta.url). */
export function importsIn(tree: Node): (Named & { readonly isType: boolean })[] {
  const found: (Named & { isType: boolean })[] = [];
  walk(tree, undefined, '', (node) => {
    const source = sourceOf(node);
    if (source === undefined) return;
    const name = isNode(source) && typeof source.value === 'string' ? source.value : '';
    const isType = node.importKind === 'type' || node.exportKind === 'type' || node.type === 'TSImportType';
    found.push({ name, at: node.start, isType });
  });
  return found;
}

/** See `Names`. */
export function namesIn(tree: Node): Names {
  const free: Named[] = [];
  const members: Named[] = [];
  const maths: Named[] = [];
  const powers: Named[] = [];
  walk(tree, undefined, '', (node, parent, key) => {
    if (node.operator === '**' || node.operator === '**=') powers.push({ name: '**', at: node.start });
    const { name } = node;
    if (node.type !== 'Identifier' || typeof name !== 'string') return;
    if (isLabel(parent, key)) members.push({ name, at: node.start });
    else if (name === 'Math') maths.push({ name: memberOf(parent, key), at: node.start });
    else free.push({ name, at: node.start });
  });
  return { free, members, maths, powers };
}

/** Each `let` or `var` outside all functions. */
export function topLevelVariables(tree: Node): Named[] {
  const body = Array.isArray(tree.body) ? tree.body.filter(isNode) : [];
  return body.flatMap((statement) => {
    const inner = statement.declaration;
    const declaration = isNode(inner) ? inner : statement;
    const { kind } = declaration;
    const isVariable = declaration.type === 'VariableDeclaration' && (kind === 'let' || kind === 'var');
    return isVariable ? [{ name: String(kind), at: declaration.start }] : [];
  });
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value && 'start' in value;
}

type Visit = (node: Node, parent: Node | undefined, key: string) => void;

function walk(value: unknown, parent: Node | undefined, key: string, visit: Visit): void {
  if (Array.isArray(value)) {
    for (const item of value) walk(item, parent, key, visit);
  } else if (isNode(value)) {
    visit(value, parent, key);
    for (const [name, child] of Object.entries(value)) walk(child, value, name, visit);
  }
}

/** What a node imports, null when it is not a string, undefined when the node imports nothing. */
function sourceOf(node: Node): unknown {
  if (node.type === 'NewExpression') return urlBesideModule(node);
  const imports = [
    'ImportDeclaration',
    'ExportNamedDeclaration',
    'ExportAllDeclaration',
    'ImportExpression',
    'TSImportType',
  ];
  if (!imports.includes(node.type)) return undefined;
  const source = node.source ?? node.argument;
  return node.type === 'ExportNamedDeclaration' ? (source ?? undefined) : (source ?? null);
}

function urlBesideModule(node: Node): unknown {
  const callee = node.callee;
  const given = Array.isArray(node.arguments) ? node.arguments.filter(isNode) : [];
  const [first, second] = given;
  const isUrl = isNode(callee) && callee.name === 'URL' && second !== undefined;
  const object = second?.object;
  return isUrl && isNode(object) && object.type === 'MetaProperty' ? first : undefined;
}

/** Whether a name is only a label: after a dot, a key of an object or a type, the outside name of an import. */
function isLabel(parent: Node | undefined, key: string): boolean {
  if (parent === undefined) return false;
  if (key === 'property' || key === 'key') return parent.computed !== true;
  return (
    key === 'imported' ||
    key === 'exported' ||
    key === 'label' ||
    (key === 'right' && parent.type === 'TSQualifiedName')
  );
}

function memberOf(parent: Node | undefined, key: string): string {
  if (parent === undefined || parent.type !== 'MemberExpression' || key !== 'object') return '';
  const { property, computed } = parent;
  return computed !== true && isNode(property) && typeof property.name === 'string' ? property.name : '';
}
