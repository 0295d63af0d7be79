import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { bakedPartsPlugin } from '../../../src/solids/partsPlugin.ts';

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  publicDir: '../../../public',
  plugins: [react(), bakedPartsPlugin()],
  build: {
    target: 'es2022',
    outDir: '../../../.cache/bench-page',
    emptyOutDir: true,
    chunkSizeWarningLimit: 3000,
  },
});
