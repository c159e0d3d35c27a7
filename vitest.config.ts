import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    projects: [
      {
        plugins: [svelte()], // so that rune classes (.svelte.ts) run in Node
        test: {
          name: 'node',
          include: ['tests/{unit,property,theory}/**/*.test.ts'],
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: 'tests/browser/global-setup.ts',
          // One browser for all files: a browser a file, or files side by side on 2 cores, were slower.
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
