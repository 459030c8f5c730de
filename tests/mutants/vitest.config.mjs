import { defineConfig } from 'vitest/config'

// For mutants: what tests/mutants/bundle.mjs makes, in a worker of its own for each of them.
export default defineConfig({
  test: {
    name: 'engine',
    environment: 'node',
    include: ['tests/bundled/bundled.test.mjs'],
    // Node loads the bundle as it is
    server: { deps: { external: [/bundled\/all\.mjs/] } },
    testTimeout: 300_000,
  },
})
