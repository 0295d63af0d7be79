import { Document, type Material, type Mesh, NodeIO, type Primitive } from '@gltf-transform/core';
import { EXTMeshoptCompression, KHRMeshQuantization } from '@gltf-transform/extensions';
import { MeshoptEncoder } from 'meshoptimizer';
import type { Hatch } from './catalogue.ts';
import type { SurfaceId } from './kernel.ts';
import type { Solid, Solids } from './solids.ts';
import { type Patch, patchesOf, sectioned } from './surfaceMesh.ts';

/** Grain coordinates lie within this length either side of nothing, m; they are stored as shares of it. */
const GRAIN_SPAN = 0.25;

/** Colour, roughness and metalness of the finishes for programs that know nothing of the bench's paints. */
const looks: Record<SurfaceId, readonly [number, number, number, rough: number, metal: number]> = {
  groundSteel: [0.51, 0.52, 0.53, 0.3, 0.85],
  plainSteel: [0.4, 0.41, 0.42, 0.34, 0.82],
  lappedSteel: [0.65, 0.67, 0.69, 0.14, 0.9],
  darkSteel: [0.15, 0.15, 0.16, 0.4, 0.75],
  zinc: [0.46, 0.47, 0.46, 0.36, 0.72],
  castIron: [0.11, 0.1, 0.1, 0.56, 0.35],
  machinedIron: [0.31, 0.31, 0.29, 0.36, 0.8],
  phosphate: [0.05, 0.05, 0.05, 0.48, 0.4],
  brass: [0.58, 0.36, 0.1, 0.27, 0.85],
  copper: [0.51, 0.22, 0.12, 0.34, 0.85],
  cut: [0.76, 0.69, 0.6, 0.9, 0],
};

/** One node of a file: a solid whole or sectioned. */
type Item = {
  readonly name: string;
  readonly extras: Record<string, unknown>;
  readonly patches: readonly Patch[];
};

/** The parts as other programs read them: one named node a solid, metres, plain numbers. */
export async function plainGlb(solids: Solids): Promise<Uint8Array> {
  const items = solids.all.map(({ id, shape }) => ({
    name: id,
    extras: {},
    patches: patchesOf(solids.shop, shape),
  }));
  return new NodeIO().writeBinary(documentOf(items, plainPrimitive));
}

/** What the bench loads: its parts whole and sectioned, quantised and packed. */
export async function packedGlb(solids: Solids): Promise<Uint8Array> {
  await MeshoptEncoder.ready;
  const items = solids.all
    .filter(({ notBaked }) => notBaked !== true)
    .flatMap((solid) => bakedItems(solids, solid));
  const doc = documentOf(items, packedPrimitive);
  doc.createExtension(KHRMeshQuantization).setRequired(true);
  doc
    .createExtension(EXTMeshoptCompression)
    .setRequired(true)
    .setEncoderOptions({ method: EXTMeshoptCompression.EncoderMethod.QUANTIZE });
  const io = new NodeIO()
    .registerExtensions([KHRMeshQuantization, EXTMeshoptCompression])
    .registerDependencies({ 'meshopt.encoder': MeshoptEncoder });
  return io.writeBinary(doc);
}

function bakedItems({ shop }: Solids, { id, shape, hatch }: Solid): Item[] {
  const whole = { name: id, extras: { solid: id }, patches: patchesOf(shop, shape) };
  if (hatch === undefined) return [whole];
  const extras = { solid: id, half: true, hatch: { ...hatch } satisfies Hatch };
  return [whole, { name: `${id}Half`, extras, patches: patchesOf(shop, sectioned(shop, shape)) }];
}

type Box = { readonly centre: readonly [number, number, number]; readonly reach: number };
type MakePrimitive = (doc: Document, patch: Patch, box: Box) => { primitive: Primitive; isScaled: boolean };

function documentOf(items: readonly Item[], make: MakePrimitive): Document {
  const doc = new Document();
  doc.createBuffer();
  doc.getRoot().getAsset().generator = 'Freestroke';
  const scene = doc.createScene('pump').setExtras({ grainSpan: GRAIN_SPAN });
  const materials = new Map<SurfaceId, Material>();
  for (const { name, extras, patches } of items) {
    const box = boxOf(patches);
    const mesh: Mesh = doc.createMesh(name);
    const node = doc.createNode(name).setMesh(mesh).setExtras(extras);
    for (const patch of patches) {
      const { primitive, isScaled } = make(doc, patch, box);
      const material = materials.get(patch.surface) ?? materialOf(doc, patch.surface);
      materials.set(patch.surface, material);
      mesh.addPrimitive(primitive.setMaterial(material));
      if (isScaled) node.setTranslation([...box.centre]).setScale([box.reach, box.reach, box.reach]);
    }
    scene.addChild(node);
  }
  return doc;
}

function materialOf(doc: Document, surface: SurfaceId): Material {
  const [r, g, b, rough, metal] = looks[surface];
  return doc
    .createMaterial(surface)
    .setBaseColorFactor([r, g, b, 1])
    .setRoughnessFactor(rough)
    .setMetallicFactor(metal);
}

function boxOf(patches: readonly Patch[]): Box {
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = low.map((x) => -x);
  for (const { position } of patches) {
    position.forEach((x, i) => {
      low[i % 3] = Math.min(low[i % 3] ?? x, x);
      high[i % 3] = Math.max(high[i % 3] ?? x, x);
    });
  }
  const middle = (i: number): number => ((low[i] ?? 0) + (high[i] ?? 0)) / 2;
  const reach = Math.max(...low.map((x, i) => ((high[i] ?? 0) - x) / 2));
  return { centre: [middle(0), middle(1), middle(2)], reach };
}

const plainPrimitive: MakePrimitive = (doc, patch) => ({
  primitive: primitiveOf(doc, patch.index, { POSITION: patch.position, NORMAL: patch.normal }, false),
  isScaled: false,
});

const packedPrimitive: MakePrimitive = (doc, patch, { centre, reach }) => {
  const [remap, count] = MeshoptEncoder.reorderMesh(patch.index.slice(), true, true);
  const index = patch.index.map((i) => remap[i] ?? 0);
  const moved = (from: Float32Array, size: number, by: (x: number, n: number) => number): number[] => {
    const to = new Array<number>(count * size).fill(0);
    from.forEach((x, i) => {
      to[(remap[Math.floor(i / size)] ?? 0) * size + (i % size)] = by(x, i % size);
    });
    return to;
  };
  const short = (x: number): number => Math.round(Math.max(-1, Math.min(1, x)) * 32767);
  const position = moved(patch.position, 3, (x, n) => short((x - (centre[n] ?? 0)) / reach));
  const normal = moved(patch.normal, 3, (x) => Math.round(x * 127));
  const grain = moved(patch.grain, 2, (x) => short(x / GRAIN_SPAN));
  const arrays =
    patch.surface === 'cut'
      ? { POSITION: Int16Array.from(position) }
      : {
          POSITION: Int16Array.from(position),
          NORMAL: Int8Array.from(normal),
          TEXCOORD_0: Int16Array.from(grain),
        };
  return { primitive: primitiveOf(doc, index, arrays, true), isScaled: true };
};

function primitiveOf(
  doc: Document,
  index: Uint32Array,
  arrays: Record<string, Float32Array | Int16Array | Int8Array>,
  isNormalised: boolean,
): Primitive {
  const buffer = doc.getRoot().listBuffers()[0] ?? null;
  const corners = index.every((i) => i < 65535) ? Uint16Array.from(index) : index;
  const primitive = doc
    .createPrimitive()
    .setIndices(doc.createAccessor().setType('SCALAR').setArray(corners).setBuffer(buffer));
  for (const [name, array] of Object.entries(arrays)) {
    const accessor = doc
      .createAccessor()
      .setType(name === 'TEXCOORD_0' ? 'VEC2' : 'VEC3')
      .setArray(array)
      .setNormalized(isNormalised)
      .setBuffer(buffer);
    primitive.setAttribute(name, accessor);
  }
  return primitive;
}
