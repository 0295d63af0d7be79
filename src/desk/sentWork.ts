import * as v from 'valibot';

/** One work that went out from this device. */
const sentSchema = v.array(
  v.strictObject({
    packed: v.string(),
    who: v.string(),
    name: v.string(),
    job: v.string(),
    when: v.number(),
  }),
);
export type Sent = v.InferOutput<typeof sentSchema>[number];

const PLACE = 'freestroke-sent-work';
/** Works that are remembered; the oldest make room. */
const MOST = 1000;

/** The works set on this device, newest last; none where nothing is kept. */
export function sentWorks(): Sent[] {
  try {
    const read = v.safeParse(sentSchema, JSON.parse(localStorage.getItem(PLACE) ?? '[]'));
    return read.success ? read.output : [];
  } catch {
    // no storage, or what stands there is none of ours
    return [];
  }
}

/** Remembers works on this device; false where the browser keeps nothing. */
export function rememberSent(works: readonly Sent[]): boolean {
  const fresh = new Set(works.map(({ packed }) => packed));
  const all = [...sentWorks().filter(({ packed }) => !fresh.has(packed)), ...works].slice(-MOST);
  try {
    localStorage.setItem(PLACE, JSON.stringify(all));
    return true;
  } catch {
    return false;
  }
}

/** Forgets every work that was set on this device. */
export function forgetSent(): void {
  try {
    localStorage.removeItem(PLACE);
  } catch {
    // where nothing can be removed, nothing was kept
  }
}
