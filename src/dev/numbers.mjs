// Writes the table of shared/docs/numbers.md from src/mechanics/tolerances.ts.
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const { module } = await runnerImport(join(root, 'src/dev/numbersTable.ts'), {
  root,
  configFile: false,
  logLevel: 'error',
})
const page = join(root, 'shared/docs/numbers.md')
const made = `<!-- numbers -->\n${module.numbersTable()}<!-- /numbers -->`
const text = readFileSync(page, 'utf8')
writeFileSync(
  page,
  text.replace(/<!-- numbers -->[\s\S]*<!-- \/numbers -->/, () => made),
)
console.log('wrote shared/docs/numbers.md')
