// Writes shared/train.schema.json from the definition of the train file.
import { writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const { module } = await runnerImport(join(root, 'src/dev/trainSchema.ts'), {
  root,
  configFile: false,
  logLevel: 'error',
})
writeFileSync(join(root, 'shared/train.schema.json'), module.trainSchema())
console.log('wrote shared/train.schema.json')
