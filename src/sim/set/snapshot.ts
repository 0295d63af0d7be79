import type { SimState } from './state.ts';

function copy(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copy);
  if (value !== null && typeof value === 'object') {
    const out: Record<string, unknown> = {};
    for (const [key, inner] of Object.entries(value)) out[key] = copy(inner);
    return out;
  }
  return value;
}

/** A plain copy of plain data (a state, a job); nothing is shared with the original. */
export function copyOf<T>(value: T): T {
  return copy(value) as T;
}

/** A plain copy of a state. */
export function copyState(state: SimState): SimState {
  return copyOf(state);
}

/** Writes plain data with sorted keys, so that equal data gives equal text; numbers as the shortest exact text. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${entries.map(([k, v]) => `${JSON.stringify(k)}:${canonical(v)}`).join(',')}}`;
  }
  if (typeof value === 'number') return Object.is(value, -0) ? '0' : String(value);
  return JSON.stringify(value) ?? 'null';
}

/** Two independent 32-bit FNV-1a sums of a text as 16 hexadecimal digits: a fingerprint, not a seal. */
export function fingerprint(text: string): string {
  let a = 0x811c9dc5;
  let b = 0x01234567;
  for (let i = 0; i < text.length; i += 1) {
    const c = text.charCodeAt(i);
    a = Math.imul(a ^ c, 0x01000193);
    b = Math.imul(b ^ (c + i), 0x01000193);
  }
  const hex = (n: number) => (n >>> 0).toString(16).padStart(8, '0');
  return hex(a) + hex(b);
}

/** Fingerprint of a whole state: equal states, equal hash, in every engine. */
export function hashState(state: SimState): string {
  return fingerprint(canonical(state));
}
