import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { deliveryPlugin } from './src/packages/deliveryPlugin.ts';
import { bakedPartsPlugin } from './src/solids/partsPlugin.ts';

/**
 * The order of these groups matters: a group takes along what its modules import, so React must be claimed
 * before the 3D libraries, or the first page would have to load them to get at React.
 */
const chunks = [
  { name: 'react', test: /node_modules[\\/](react|react-dom|scheduler|zustand)[\\/]/, priority: 2 },
  { name: 'three', test: /node_modules[\\/](three|three-[\w-]+|@react-three)[\\/]/, priority: 1 },
];

export default defineConfig({
  // Relative addresses, so that the built folder works from any path of any server.
  base: './',
  plugins: [react(), bakedPartsPlugin(), deliveryPlugin()],
  build: {
    target: 'es2022',
    // The 3D libraries are one large chunk that only the bench asks for.
    chunkSizeWarningLimit: 1500,
    rolldownOptions: { output: { codeSplitting: { groups: chunks } } },
  },
  preview: { host: '127.0.0.1' },
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/browser/**'],
          setupFiles: ['tests/setup.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/setup.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // A machine at its limit can starve one page for a while; what fails twice is a fault.
          retry: 1,
          // One Chromium at a time, and after the unit tests: software 3D needs the whole machine.
          maxWorkers: 1,
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
