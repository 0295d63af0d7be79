import { BufferAttribute, type BufferGeometry, Float32BufferAttribute, Mesh, type Object3D } from 'three';
import { MeshoptDecoder } from 'three/examples/jsm/libs/meshopt_decoder.module.js';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import type { PartForm } from '../form/part.ts';
import { hatched, joined, painted, paintNamed } from '../look/paints.ts';

/** The baked parts by name. */
export type Parts = {
  /** One form of several baked parts that make one piece, each raised by so much (m); throws on an unknown name. */
  form(...parts: readonly (string | readonly [name: string, up: number])[]): PartForm;
};

type Hatch = { readonly angle: number; readonly spacing: number; readonly light?: boolean };

/** Reads and unpacks the file of baked parts and gives every surface the paint of its name. */
export async function readParts(bytes: ArrayBuffer): Promise<Parts> {
  const { scene } = await new GLTFLoader().setMeshoptDecoder(MeshoptDecoder).parseAsync(bytes, '');
  scene.updateMatrixWorld(true);
  const span = Number(scene.userData.grainSpan);
  const forms = new Map<string, PartForm>();
  for (const node of [...scene.children].sort((a, b) => Number(isHalf(a)) - Number(isHalf(b)))) {
    const name = String(node.userData.solid);
    const solid = (mesh: Mesh): boolean => materialName(mesh) !== 'cut';
    const surfaces = meshesOf(node)
      .filter(solid)
      .map((mesh) => surfaceOf(mesh, span));
    const whole = forms.get(name)?.whole;
    if (whole === undefined) {
      forms.set(name, { whole: joined(surfaces) });
      continue;
    }
    const faces = meshesOf(node).filter((mesh) => !solid(mesh));
    const cut = joined(faces.map((mesh) => cutOf(mesh, node.userData.hatch)));
    forms.set(name, { whole, half: joined(surfaces), cut });
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

function isHalf(node: Object3D): boolean {
  return node.userData.half === true;
}

function meshesOf(node: Object3D): Mesh[] {
  const found: Mesh[] = [];
  node.traverse((one) => {
    if (one instanceof Mesh) found.push(one);
  });
  return found;
}

function materialName({ material }: Mesh): string {
  return Array.isArray(material) ? '' : material.name;
}

/** A baked surface in metres, painted. */
function surfaceOf(mesh: Mesh, span: number): BufferGeometry {
  const geometry = placed(mesh);
  const uv = geometry.getAttribute('uv');
  geometry.setAttribute(
    'uv',
    new Float32BufferAttribute(
      Array.from({ length: uv.count }, (_, i) => [uv.getX(i) * span, uv.getY(i) * span]).flat(),
      2,
    ),
  );
  return painted(geometry, paintNamed(materialName(mesh)));
}

/** A baked cut face, flat in z = 0 and facing the front, hatched. */
function cutOf(mesh: Mesh, hatch: Hatch): BufferGeometry {
  const geometry = placed(mesh);
  const count = geometry.getAttribute('position').count;
  const front = new Float32Array(count * 3);
  for (let i = 0; i < count; i++) front[i * 3 + 2] = 1;
  geometry.setAttribute('normal', new BufferAttribute(front, 3));
  geometry.setAttribute('uv', new Float32BufferAttribute(new Float32Array(count * 2), 2));
  return hatched(geometry, hatch.angle, hatch.spacing, hatch.light ?? false);
}

/** The packed whole numbers as plain metres where the node has them, unit normals as plain numbers. */
function placed(mesh: Mesh): BufferGeometry {
  const geometry: BufferGeometry = mesh.geometry;
  for (const name of ['position', 'normal']) {
    const packed = geometry.getAttribute(name);
    if (packed === undefined) continue;
    const plain = Array.from({ length: packed.count }, (_, i) => [
      packed.getX(i),
      packed.getY(i),
      packed.getZ(i),
    ]);
    geometry.setAttribute(name, new Float32BufferAttribute(plain.flat(), 3));
  }
  return geometry.applyMatrix4(mesh.matrixWorld);
}
