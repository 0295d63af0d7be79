import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { bakedParts } from './bake.ts';
import { definition } from './definition.ts';

/**
 * Builds the pump's parts from the definition and puts them among the files that are fetched by address.
 *
 * A build tries the assembled pump as well, and fails with a sentence a fault; a development server only the parts.
 */
export function bakedPartsPlugin(): Plugin {
  return {
    name: 'freestroke-parts',
    // A preview serves what was built, and the unit tests bake in memory.
    apply: (_, { command, isPreview }) =>
      isPreview !== true && (command === 'build' || process.env.VITEST === undefined),
    async configResolved({ command, publicDir }) {
      const bytes = await bakedParts(definition, command === 'build' ? 'assembly' : 'parts');
      const folder = join(publicDir, 'parts');
      mkdirSync(folder, { recursive: true });
      // In one stroke, so that nobody reads half a file.
      const draft = join(folder, `pump-${process.pid}.tmp`);
      writeFileSync(draft, bytes);
      renameSync(draft, join(folder, 'pump.glb'));
    },
  };
}
