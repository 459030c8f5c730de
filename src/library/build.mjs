// Builds what `npm pack` carries: two modules for Node, and the types of all that they lead to.
import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const root = fileURLToPath(new URL('../..', import.meta.url))
const out = join(root, 'dist-library')
rmSync(out, { recursive: true, force: true })
await build({
  root,
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: true,
    outDir: out,
    target: 'node20',
    rolldownOptions: {
      input: { index: 'src/library/index.ts', solver: 'src/library/solver.ts' },
      output: { entryFileNames: '[name].mjs', chunkFileNames: '[name].mjs' },
    },
  },
})
const tsc = join(root, 'node_modules', 'typescript', 'bin', 'tsc')
const { status } = spawnSync(process.execPath, [tsc, '-p', 'src/library'], {
  cwd: root,
  stdio: 'inherit',
})
if (status !== 0) throw new Error('the types of the library could not be made')
// Node's own way to resolve asks for the ending that the sources leave out
for (const entry of readdirSync(join(out, 'types'), { recursive: true, withFileTypes: true })) {
  if (!entry.isFile()) continue
  const file = join(entry.parentPath, entry.name)
  const text = readFileSync(file, 'utf8')
  writeFileSync(file, text.replace(/(from |import\()(['"])(\.[^'"]+)\2/g, '$1$2$3.js$2'))
}
