/** A value of JSON. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type JsonObject = { readonly [key: string]: Json };

const isObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const same = (a: Json | undefined, b: Json | undefined): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * What changes `from` into `to`, as a JSON merge patch (RFC 7396): lists are replaced whole, null takes a key away.
 * Throws RangeError where `to` itself has a null, which such a patch cannot say.
 */
export function patchBetween(from: Json, to: Json): Json {
  if (!isObject(from) || !isObject(to)) return to;
  const patch: Record<string, Json> = {};
  for (const key of Object.keys(from)) if (!Object.hasOwn(to, key)) patch[key] = null;
  for (const [key, value] of Object.entries(to)) {
    if (value === null) throw new RangeError(`${key}: a merge patch cannot set null`);
    const old = Object.hasOwn(from, key) ? from[key] : undefined;
    if (!same(old, value)) patch[key] = old === undefined ? value : patchBetween(old, value);
  }
  return patch;
}

/** Applies a JSON merge patch (RFC 7396, section 2); changes neither argument. Keys of the prototype are plain data. */
export function patched(target: Json, patch: Json): Json {
  if (!isObject(patch)) return patch;
  const result = new Map(isObject(target) ? Object.entries(target) : []);
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) result.delete(key);
    else result.set(key, patched(result.get(key) ?? {}, value));
  }
  return Object.fromEntries(result);
}
