import { fileURLToPath } from 'node:url'
import vue from '@vitejs/plugin-vue'
import { defineConfig } from 'vitest/config'
import { workerScopesPlugin } from './tests/app/workerScopes.ts'

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
    include: ['tests/**/*.test.ts'],
    // a busy machine takes its time: this only ends what would never come
    testTimeout: 300_000,
  },
})
