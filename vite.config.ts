import vue from '@vitejs/plugin-vue'
import { VitePWA } from 'vite-plugin-pwa'
import { defineConfig } from 'vitest/config'
import { alias, define, target } from './src/dev/builtApp.ts'
import { compressBuild } from './src/dev/compressBuild.ts'
import { firstChunks } from './src/dev/firstChunks.ts'
import { installed } from './src/dev/installed.ts'
import { sharedWorkers } from './src/dev/sharedWorkers.ts'
import { valuesOnly } from './src/dev/valuesOnly.ts'

/** Tests that mount the whole sheet. */
const sheets = ['tests/app/**/*.test.ts']
/** Tests that stand in for a browser, or put another module in the place of one of ours. */
const apart = [
  'tests/app/{cells,planner,useDrag}.test.ts',
  'tests/browser/**/*.test.ts',
  'tests/shelf/**/*.test.ts',
  'tests/cli/failure.test.ts',
  'tests/solver/stalled.test.ts',
]

// The browser build, the development server and the Vitest run.
export default defineConfig({
  base: './',
  publicDir: 'src/app/public',
  plugins: [
    vue(),
    ...(process.env.VITEST
      ? []
      : [valuesOnly(), sharedWorkers(), VitePWA(installed), compressBuild()]),
  ],
  worker: { format: 'es' },
  define: process.env.VITEST ? {} : define,
  optimizeDeps: { exclude: ['glpk.js'] },
  resolve: { alias: process.env.VITEST ? [] : alias },
  // the built app, once opened at a port, is kept there by the browser: development has a port of its own
  server: { port: 5273 },
  // a chunk is fetched by pages and workers alike, and a worker has no document to preload for
  build: {
    target,
    modulePreload: { polyfill: false, resolveDependencies: () => [] },
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: firstChunks() }] } } },
  },
  test: {
    environment: 'node',
    // a busy machine takes its time: these only end what would never come
    testTimeout: 300_000,
    hookTimeout: 300_000,
    // trains are planned by the thousand, and what is thrown away at once should never grow old: an eighth less time
    execArgv: ['--max-semi-space-size=64'],
    projects: [
      {
        extends: true,
        // nothing here keeps anything between two tests: files share what a worker has loaded, which halves the time
        test: {
          name: 'engine',
          include: ['tests/**/*.test.ts'],
          exclude: [...sheets, ...apart],
          isolate: false,
        },
      },
      // nor does the sheet, which is mounted anew for each test: what a planner knows of the examples serves all files
      {
        extends: true,
        test: {
          name: 'sheet',
          include: [...sheets],
          exclude: [...apart],
          isolate: false,
          setupFiles: ['tests/app/setup.ts'],
        },
      },
      { extends: true, test: { name: 'apart', include: [...apart] } },
    ],
  },
})
