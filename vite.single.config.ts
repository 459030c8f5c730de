import vue from '@vitejs/plugin-vue'
import { defineConfig } from 'vite'
import { alias, define, target } from './src/dev/builtApp.ts'
import { inlineWorkers } from './src/dev/inlineWorkers.ts'
import { onePage } from './src/dev/onePage.ts'
import { valuesOnly } from './src/dev/valuesOnly.ts'

// The app as one file that opens without a server.
export default defineConfig({
  base: './',
  publicDir: false,
  plugins: [vue(), valuesOnly(), inlineWorkers(), onePage('holdfast.html')],
  define,
  resolve: { alias },
  build: {
    target,
    outDir: 'dist-single',
    cssCodeSplit: false,
    assetsInlineLimit: () => true,
    modulePreload: false,
    rolldownOptions: { output: { codeSplitting: false } },
  },
})
