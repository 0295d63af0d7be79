import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  plugins: [react()],
  build: {
    target: 'es2022',
    outDir: '../../../.cache/bench-page',
    emptyOutDir: true,
    chunkSizeWarningLimit: 3000,
  },
});
