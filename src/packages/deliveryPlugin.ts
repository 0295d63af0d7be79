import { readdirSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import type { Plugin } from 'vite';

/**
 * What the page may load and ask: itself and nothing else. Styles of single elements are set by the 3D library; the
 * simplifier of forms is WebAssembly; images and blobs are made by the page itself.
 */
export const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self' data: blob:",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
].join('; ');

/** Every file in a folder, as addresses from it. */
function addressesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

/** Gives the built page its security policy, and writes files.json: what a package has to take along. */
export function deliveryPlugin(): Plugin {
  return {
    name: 'freestroke-delivery',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
    writeBundle({ dir }) {
      // threads are bundled by themselves, without a folder of their own
      if (dir === undefined) return;
      const files = addressesIn(dir).filter((path) => path !== 'files.json');
      writeFileSync(join(dir, 'files.json'), JSON.stringify(files));
    },
  };
}
