import { defineConfig } from 'vite'

// The command line: one file for Node. The solver stays outside, because its wasm lies beside its own code.
export default defineConfig({
  build: {
    ssr: 'src/cli/main.ts',
    outDir: process.env.HOLDFAST_CLI_OUT ?? 'dist-cli',
    target: 'node20',
    rolldownOptions: { output: { entryFileNames: 'cli.mjs' } },
  },
  ssr: { noExternal: ['zod', '@remix-run/html-template', 'uqr'] },
})
