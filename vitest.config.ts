import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Folders of files that each take long; begun last, one of them would run on alone. */
const LONG = /\/tests\/(?:property|theory)\//u;

/** Files that put something else in the place of a module or of what the host gives. */
const ALONE = 'tests/unit/**/*.alone.test.ts';

/**
 * On CI 2 cores are shared by what is waited for and who waits: there a test may need a second go, and the log says
 * which did. At a desk none is given, so that a race is seen and mended.
 */
const RETRY = process.env.CI === 'true' ? 1 : 0;

/** By itself vitest leaves a core free: on 2 cores the files would run one after another. */
const IN_NODE = { testTimeout: 60_000, maxWorkers: '100%', retry: RETRY };

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.sort((a, b) => Number(LONG.test(b.moduleId)) - Number(LONG.test(a.moduleId)));
  }
}

export default defineConfig({
  test: {
    sequence: { sequencer: LongFirst },
    projects: [
      {
        plugins: [svelte()], // so that rune classes (.svelte.ts) run in Node
        // One process for many files: to load the rooms anew for each took longer than the tests.
        test: {
          name: 'unit',
          include: ['tests/unit/**/*.test.ts'],
          exclude: [ALONE],
          isolate: false,
          ...IN_NODE,
        },
      },
      { test: { name: 'alone', include: [ALONE], ...IN_NODE } },
      {
        test: {
          name: 'grown',
          include: ['tests/{property,theory}/**/*.test.ts'],
          ...IN_NODE,
          isolate: false,
          // Loaded by Node itself: vite puts a getter behind each imported name, at which plans grew half as fast
          // again and the looks at each of their cells took several times as long.
          experimental: { viteModuleRunner: false, nodeLoader: false },
          execArgv: ['--import', 'tsx'],
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
          // What follows an action may come through a worker: on a busy machine later than vitest's one second.
          expect: { poll: { timeout: 15_000 } },
          retry: RETRY,
        },
      },
    ],
  },
});
