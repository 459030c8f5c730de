import { dirname, resolve } from 'node:path'
import { build, type Plugin } from 'vite'

/** A worker as the app's sources start it. */
const start =
  /new Worker\(\s*new URL\(\s*'([^']+\.worker\.ts)',\s*import\.meta\.url,?\s*\),\s*\{\s*type:\s*'module',?\s*\},?\s*\)/g
const text = '\0worker-text:'

/**
 * Builds each of the app's workers into one script that the page carries as text, and starts it from there: a page without
 * a server has no other address to start it from.
 */
export function inlineWorkers(): Plugin {
  return {
    name: 'holdfast-inline-workers',
    apply: 'build',
    enforce: 'pre',
    resolveId: (id) => (id.startsWith(text) ? id : undefined),
    transform(code, id) {
      if (!code.includes('.worker.ts')) return
      const imports: string[] = []
      const changed = code.replace(start, (_, worker: string) => {
        const name = `workerText${imports.length}`
        imports.push(`import ${name} from ${JSON.stringify(text + resolve(dirname(id), worker))}`)
        return `new Worker(URL.createObjectURL(new Blob([${name}], { type: 'text/javascript' })))`
      })
      return imports.length > 0 ? [...imports, changed].join('\n') : undefined
    },
    async load(id) {
      if (!id.startsWith(text)) return
      return `export default ${JSON.stringify(await workerScript(id.slice(text.length)))}`
    },
  }
}

/** The text of one worker with everything in it, its solver too. */
async function workerScript(file: string): Promise<string> {
  const made = await build({
    configFile: 'vite.single.config.ts',
    logLevel: 'error',
    plugins: [],
    build: {
      write: false,
      rolldownOptions: { input: file, output: { format: 'es', codeSplitting: false } },
    },
  })
  const outputs = Array.isArray(made) ? made : [made]
  const [script] = outputs.flatMap((one) => ('output' in one ? one.output : []))
  if (script?.type !== 'chunk') throw new Error(`no script came of the worker ${file}`)
  // browsers refuse modules of such an address where the page is a file
  const meta = '({ url: self.location.href })'
  return `'use strict';\n${script.code.replaceAll('import.meta', meta)}`
}
