import type { VitePWAOptions } from 'vite-plugin-pwa'

/**
 * The app as it is installed and kept for use without a network: what the plugin makes of a build. A newer version waits
 * until somebody takes it: src/app/stores/newVersion.ts asks.
 */
export const installed: Partial<VitePWAOptions> = {
  registerType: 'prompt',
  injectRegister: false,
  manifest: {
    name: 'Holdfast',
    short_name: 'Holdfast',
    description:
      'Plans the alignment of machine trains: which machine to hold, and the least shim and slide at every foot.',
    display: 'standalone',
    start_url: '.',
    background_color: '#f7f4ec',
    theme_color: '#1c2b3c',
    icons: [192, 512].map((size) => ({
      src: `icon-${size}.png`,
      sizes: `${size}x${size}`,
      type: 'image/png',
    })),
  },
  workbox: {
    globPatterns: ['**/*.{js,css,html,wasm,svg,png,woff2}'],
    // the solver and the sheet are larger than what is kept without asking
    maximumFileSizeToCacheInBytes: 6_000_000,
  },
}
