import { resolve } from 'node:path'
import type { Plugin } from 'vite'
import { compressFolder } from './compressed.mjs'

/** Compresses what was built, last of all, so that the server need not. */
export function compressBuild(): Plugin {
  let folder = ''
  return {
    name: 'holdfast-compress-build',
    apply: 'build',
    enforce: 'post',
    configResolved({ root, build }) {
      folder = resolve(root, build.outDir)
    },
    closeBundle: { order: 'post', sequential: true, handler: () => compressFolder(folder) },
  }
}
