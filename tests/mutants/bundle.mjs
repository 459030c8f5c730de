// Makes one file of some test files and all that they import, for npm run mutants: loading some hundred sources anew for
// every mutant would take ten times as long as the tests themselves. It lies as deep as the tests do, for what they
// read beside themselves. Run where the sources are, with the names of the tests: engine/motion engine/growth ...
import { mkdirSync, writeFileSync } from 'node:fs'
import { build } from 'vite'

const folder = 'tests/bundled'
const names = process.argv.slice(2)
mkdirSync(folder, { recursive: true })
const loads = names.map((name) => `  '${name}': () => import('../${name}.test'),\n`)
writeFileSync(`${folder}/all.ts`, `export const all = {\n${loads.join('')}}\n`)
// a mutant that keeps a test file from loading leaves no test that could fail: it has to be told by one
writeFileSync(
  `${folder}/bundled.test.mjs`,
  `import { test } from 'vitest'
import { all } from './all.mjs'
for (const [name, load] of Object.entries(all))
  await load().catch((error) => test(name + ' loads', () => Promise.reject(error)))
`,
)
await build({
  configFile: false,
  logLevel: 'error',
  publicDir: false,
  build: {
    ssr: `${folder}/all.ts`,
    outDir: folder,
    emptyOutDir: false,
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'all.mjs', codeSplitting: false } },
  },
})
