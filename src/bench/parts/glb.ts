import { MeshoptDecoder } from 'three/examples/jsm/libs/meshopt_decoder.module.js';

/** One surface of a node: its finish, three corners a triangle, positions m, unit normals, grain m. */
export type GlbSurface = {
  readonly finish: string;
  readonly index: Uint32Array;
  readonly position: Float32Array;
  readonly normal: Float32Array | null;
  readonly grain: Float32Array | null;
};
/** One node of the file with what its builder wrote beside it. */
export type GlbNode = {
  readonly extras: Readonly<Record<string, unknown>>;
  readonly surfaces: readonly GlbSurface[];
};

/** What of the glTF 2.0 format the baked file uses; lengths in bytes. */
type Gltf = {
  readonly scenes: readonly { readonly extras: { readonly grainSpan: number } }[];
  readonly nodes: readonly {
    readonly mesh: number;
    readonly extras?: Readonly<Record<string, unknown>>;
    readonly translation?: readonly number[];
    readonly scale?: readonly number[];
  }[];
  readonly meshes: readonly {
    readonly primitives: readonly {
      readonly attributes: Readonly<Record<string, number>>;
      readonly indices: number;
      readonly material: number;
    }[];
  }[];
  readonly materials: readonly { readonly name: string }[];
  readonly accessors: readonly {
    readonly bufferView: number;
    readonly byteOffset?: number;
    readonly componentType: number;
    readonly count: number;
  }[];
  readonly bufferViews: readonly {
    readonly extensions: {
      readonly EXT_meshopt_compression: {
        readonly byteOffset?: number;
        readonly byteLength: number;
        readonly byteStride: number;
        readonly count: number;
        readonly mode: string;
        readonly filter?: string;
      };
    };
  }[];
};

/** Component types of the format: bytes of one, and its greatest value where it stands for 1. */
const kinds: Readonly<
  Record<number, { readonly size: number; readonly one: number; read(v: DataView, at: number): number }>
> = {
  5120: { size: 1, one: 127, read: (v, at) => v.getInt8(at) },
  5122: { size: 2, one: 32767, read: (v, at) => v.getInt16(at, true) },
  5123: { size: 2, one: 65535, read: (v, at) => v.getUint16(at, true) },
  5125: { size: 4, one: 4294967295, read: (v, at) => v.getUint32(at, true) },
};

/**
 * Unpacks the baked file: glTF 2.0 binary with packed whole numbers, as `npm run build` writes it.
 *
 * Only what that file uses is understood; the library's own loader is four times as long on the wire.
 */
export async function readGlb(bytes: ArrayBuffer): Promise<GlbNode[]> {
  await MeshoptDecoder.ready;
  const head = new DataView(bytes);
  if (head.byteLength < 20 || head.getUint32(0, true) !== 0x46546c67)
    throw new Error('the file of parts is not glTF');
  const jsonLength = head.getUint32(12, true);
  const gltf = JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, 20, jsonLength))) as Gltf;
  const packed = new Uint8Array(bytes, 28 + jsonLength);
  const views = gltf.bufferViews.map((view) => {
    const {
      byteOffset = 0,
      byteLength,
      byteStride,
      count,
      mode,
      filter,
    } = view.extensions.EXT_meshopt_compression;
    const plain = new Uint8Array(count * byteStride);
    const source = packed.subarray(byteOffset, byteOffset + byteLength);
    MeshoptDecoder.decodeGltfBuffer(plain, count, byteStride, source, mode, filter);
    return { data: new DataView(plain.buffer), stride: byteStride };
  });
  /** Numbers of one accessor, `width` an element; whole, or as shares of one. */
  const numbers = (id: number, width: number, isShare: boolean): number[] => {
    const accessor = gltf.accessors[id];
    const view = views[accessor?.bufferView ?? -1];
    const kind = kinds[accessor?.componentType ?? 0];
    if (accessor === undefined || view === undefined || kind === undefined)
      throw new Error(`the file of parts has no accessor ${id}`);
    const list: number[] = [];
    for (let i = 0; i < accessor.count; i++) {
      for (let k = 0; k < width; k++) {
        const value = kind.read(view.data, (accessor.byteOffset ?? 0) + i * view.stride + k * kind.size);
        list.push(isShare ? Math.max(-1, value / kind.one) : value);
      }
    }
    return list;
  };
  const span = gltf.scenes[0]?.extras.grainSpan ?? 1;
  return gltf.nodes.map(({ mesh, extras = {}, translation = [0, 0, 0], scale = [1, 1, 1] }) => ({
    extras,
    surfaces: (gltf.meshes[mesh]?.primitives ?? []).map(({ attributes, indices, material }): GlbSurface => {
      const { POSITION = -1, NORMAL, TEXCOORD_0 } = attributes;
      const place = numbers(POSITION, 3, true);
      return {
        finish: gltf.materials[material]?.name ?? '',
        index: Uint32Array.from(numbers(indices, 1, false)),
        position: Float32Array.from(place, (x, i) => x * (scale[i % 3] ?? 1) + (translation[i % 3] ?? 0)),
        normal: NORMAL === undefined ? null : Float32Array.from(numbers(NORMAL, 3, true)),
        grain:
          TEXCOORD_0 === undefined ? null : Float32Array.from(numbers(TEXCOORD_0, 2, true), (x) => x * span),
      };
    }),
  }));
}
