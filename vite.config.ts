import { fileURLToPath } from 'node:url'
import vue from '@vitejs/plugin-vue'
import { defineConfig } from 'vitest/config'
import { workerScopesPlugin } from './tests/app/workerScopes.ts'

/** Tests that mount the sheet, stand in for a browser, or put another module in the place of one of ours. */
const sheets = [
  'tests/app/**/*.test.ts',
  'tests/browser/**/*.test.ts',
  'tests/shelf/**/*.test.ts',
  'tests/cli/failure.test.ts',
]

// The browser build, the development server and the Vitest run.
export default defineConfig({
  base: './',
  plugins: [vue(), ...(process.env.VITEST ? [workerScopesPlugin()] : [])],
  worker: { format: 'es' },
  optimizeDeps: { exclude: ['glpk.js'] },
  resolve: {
    alias: process.env.VITEST
      ? []
      : [
          {
            find: /^module$/,
            replacement: fileURLToPath(new URL('./src/solvers/nodeModuleStub.ts', import.meta.url)),
          },
        ],
  },
  build: { target: 'es2022' },
  test: {
    environment: 'node',
    // a busy machine takes its time: this only ends what would never come
    testTimeout: 300_000,
    projects: [
      {
        extends: true,
        // nothing here keeps anything between two tests: files share what a worker has loaded, which halves the time
        test: {
          name: 'engine',
          include: ['tests/**/*.test.ts'],
          exclude: [...sheets],
          isolate: false,
        },
      },
      // the whole sheet is mounted: stores, storage and the page are each file's own
      { extends: true, test: { name: 'sheet', include: [...sheets] } },
    ],
  },
})
