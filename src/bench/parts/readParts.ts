import { BufferAttribute, BufferGeometry } from 'three';
import type { PartForm } from '../form/part.ts';
import { hatched, joined, painted, paintNamed } from '../look/paints.ts';
import { type GlbNode, type GlbSurface, readGlb } from './glb.ts';

/** The baked parts by name. */
export type Parts = {
  /** One form of several baked parts that make one piece, each raised by so much (m); throws on an unknown name. */
  form(...parts: readonly (string | readonly [name: string, up: number])[]): PartForm;
};

type Hatch = { readonly angle: number; readonly spacing: number; readonly light?: boolean };
/** What the file says beside each node. */
type Extras = { readonly solid: string; readonly half?: boolean; readonly hatch?: Hatch };

/** Reads and unpacks the file of baked parts and gives every surface the paint of its name. */
export async function readParts(bytes: ArrayBuffer): Promise<Parts> {
  const forms = new Map<string, PartForm>();
  for (const node of await readGlb(bytes)) {
    const { solid, half, hatch } = node.extras as Extras;
    const whole = forms.get(solid)?.whole;
    // A part's whole form comes before its half.
    if (half !== true || hatch === undefined || whole === undefined)
      forms.set(solid, { whole: surfaceOf(node) });
    else forms.set(solid, { whole, half: surfaceOf(node), cut: cutOf(node, hatch) });
  }
  return { form: (...parts) => formFrom(forms, parts) };
}

function formFrom(
  forms: ReadonlyMap<string, PartForm>,
  parts: readonly (string | readonly [string, number])[],
): PartForm {
  const list = parts.map((part) => {
    const [name, up] = typeof part === 'string' ? [part, 0] : part;
    const form = forms.get(name);
    if (form === undefined) throw new Error(`the file of baked parts has no ${name}`);
    const raised = (geometry: BufferGeometry): BufferGeometry => geometry.clone().translate(0, up, 0);
    return { ...form, raised };
  });
  const whole = joined(list.map((form) => form.raised(form.whole)));
  if (list.every((form) => form.half === undefined)) return { whole };
  const half = joined(list.map((form) => form.raised(form.half ?? form.whole)));
  const cuts = list.flatMap(({ cut, raised }) => (cut === undefined ? [] : [raised(cut)]));
  return { whole, half, cut: joined(cuts) };
}

/** All surfaces of a node but those of the cut, painted. */
function surfaceOf({ surfaces }: GlbNode): BufferGeometry {
  return joined(
    surfaces
      .filter(({ finish }) => finish !== 'cut')
      .map((surface) => painted(geometryOf(surface), paintNamed(surface.finish))),
  );
}

/** The cut faces of a node, flat in z = 0 and facing the front, hatched. */
function cutOf({ surfaces }: GlbNode, { angle, spacing, light = false }: Hatch): BufferGeometry {
  const faces = surfaces.filter(({ finish }) => finish === 'cut');
  return joined(faces.map((face) => hatched(geometryOf(face), angle, spacing, light)));
}

function geometryOf({ index, position, normal, grain }: GlbSurface): BufferGeometry {
  const count = position.length / 3;
  const front = (): Float32Array => Float32Array.from(position, (_, i) => (i % 3 === 2 ? 1 : 0));
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('normal', new BufferAttribute(normal ?? front(), 3));
  geometry.setAttribute('uv', new BufferAttribute(grain ?? new Float32Array(count * 2), 2));
  geometry.setIndex(new BufferAttribute(index, 1));
  return geometry;
}
