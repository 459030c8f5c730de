import { dirname, resolve } from 'node:path'
import type { Plugin } from 'vite'

/** A worker as the app's sources start it. */
const address = /new URL\(\s*'([^']+\.worker\.ts)',\s*import\.meta\.url,?\s*\)/g

/**
 * Builds the app's workers together with the page, so that what both use is fetched once. Vite alone builds each worker
 * by itself, with everything it uses in it once more.
 */
export function sharedWorkers(): Plugin {
  return {
    name: 'holdfast-shared-workers',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      if (!code.includes('.worker.ts')) return
      return code.replace(address, (_, worker: string) => {
        const chunk = this.emitFile({ type: 'chunk', id: resolve(dirname(id), worker) })
        return `import.meta.ROLLUP_FILE_URL_${chunk}`
      })
    },
  }
}
