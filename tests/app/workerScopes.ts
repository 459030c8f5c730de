import type { Plugin } from 'vite'

/** What a worker's own script finds as its surroundings when it runs inside the test. */
export interface WorkerScope {
  readonly self: object
  readonly setTimeout: (later: () => void, ms?: number) => unknown
}

declare global {
  var workerScopes: Map<string, WorkerScope> | undefined
}

/**
 * Lets a test run the script of a worker in its own thread: "x.worker.ts?scope=3" is that script with the
 * third of `workerScopes` in place of the worker's global `self` and `setTimeout`.
 */
export const workerScopesPlugin = (): Plugin => ({
  name: 'worker-scopes',
  enforce: 'pre',
  transform(code, id) {
    const [, scope] = /\.worker\.ts\?(?:.*&)?scope=(\d+)/.exec(id) ?? []
    return scope === undefined
      ? undefined
      : `const { self, setTimeout } = globalThis.workerScopes.get('${scope}');\n${code}`
  },
})
