import type { CDPSession } from 'playwright-core';

/** What a page's heap holds after a collection of garbage, bytes. */
export type Heap = {
  /** Objects, arrays, closures, strings. */
  readonly objects: number;
  /** Memory of typed arrays. */
  readonly buffers: number;
  /** What the compiler has made so far: grows while it still finds something to make quicker, leak or no leak. */
  readonly code: number;
  /** The browser's own: elements, and its records of how the page fared, which it cuts off at some hundreds. */
  readonly native: number;
};

type Snapshot = {
  readonly snapshot: { readonly meta: { readonly node_fields: string[]; readonly node_types: [string[]] } };
  readonly nodes: readonly number[];
};

/** Collects garbage and weighs what is left. */
export async function weighHeap(cdp: CDPSession): Promise<Heap> {
  for (let i = 0; i < 3; i += 1) await cdp.send('HeapProfiler.collectGarbage');
  const { backingStorageSize } = await cdp.send('Runtime.getHeapUsage');
  const sizes = sizesByType(await snapshotOf(cdp));
  const of = (type: string): number => sizes.get(type) ?? 0;
  const all = [...sizes.values()].reduce((sum, size) => sum + size, 0);
  // Buffers are told by the engine itself: a snapshot counts them among what is native.
  return {
    objects: all - of('code') - of('native') - of('synthetic'),
    buffers: backingStorageSize,
    code: of('code'),
    native: of('native') - backingStorageSize,
  };
}

async function snapshotOf(cdp: CDPSession): Promise<Snapshot> {
  const chunks: string[] = [];
  const take = ({ chunk }: { chunk: string }): void => void chunks.push(chunk);
  cdp.on('HeapProfiler.addHeapSnapshotChunk', take);
  await cdp.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false });
  cdp.off('HeapProfiler.addHeapSnapshotChunk', take);
  return JSON.parse(chunks.join(''));
}

function sizesByType({ snapshot, nodes }: Snapshot): Map<string, number> {
  const { node_fields: fields, node_types: types } = snapshot.meta;
  const type = fields.indexOf('type');
  const size = fields.indexOf('self_size');
  const sizes = new Map<string, number>();
  for (let at = 0; at < nodes.length; at += fields.length) {
    const name = types[0][nodes[at + type] ?? 0] ?? 'unknown';
    sizes.set(name, (sizes.get(name) ?? 0) + (nodes[at + size] ?? 0));
  }
  return sizes;
}
