import { fileURLToPath } from 'node:url'

// What every build of the app is made with, that for a server and the one file.

/** The solver's package asks for Node's `module`, under Node alone. */
export const alias = [
  {
    find: /^module$/,
    replacement: fileURLToPath(new URL('../solvers/nodeModuleStub.ts', import.meta.url)),
  },
]

/** The app has neither components of the older kind nor, once it is built, tools that look into it. */
export const define = { __VUE_OPTIONS_API__: 'false', __VUE_PROD_DEVTOOLS__: 'false' }

export const target = 'es2022'
