import { defineConfig, devices } from '@playwright/test'
import { browserAdvice, findBrowser } from './src/dev/browser.mjs'

// The browser tests: the built app, served as `npm start` serves it, in an installed Chromium.
const executablePath = findBrowser()
if (executablePath === undefined) throw new Error(`no browser: ${browserAdvice}`)

const port = process.env.HOLDFAST_TEST_PORT ?? '4173'
const address = `http://127.0.0.1:${port}/`
const root = process.getuid?.() === 0

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results',
  workers: 2,
  fullyParallel: true,
  // a busy machine takes its time: these only end what would never come
  timeout: 600_000,
  expect: { timeout: 120_000 },
  // on a loaded machine a browser without a screen may stop drawing frames, and a click then waits for ever for its button
  // to stand still: such a test is run once more, in a browser of its own, and told as flaky
  retries: 1,
  // the usual run leaves out what takes long, the whole run the looks that others cover: axe size by size, theme by theme
  ...(process.env.HOLDFAST_LONG === '1'
    ? {}
    : { grepInvert: process.env.HOLDFAST_WHOLE === '1' ? /@long/ : /@long|@whole/ }),
  forbidOnly: process.env.CI !== undefined,
  reporter: 'list',
  use: {
    ...devices['Desktop Chrome'],
    baseURL: address,
    // what is kept for use without a network is asked for by its own tests; the others see each build as it is
    serviceWorkers: 'block',
    actionTimeout: 120_000,
    // a trace takes two pictures of the page around every key, which takes its time: HOLDFAST_TRACE=1 asks for it
    trace: process.env.HOLDFAST_TRACE === '1' ? 'retain-on-failure' : 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath,
      // Chromium's sandbox refuses to run as root.
      args: root ? ['--no-sandbox'] : [],
    },
  },
  webServer: {
    command: 'node src/dev/start.mjs',
    env: { PORT: port },
    url: address,
    reuseExistingServer: false,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5000 },
  },
})
