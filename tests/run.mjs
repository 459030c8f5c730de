// npm test: installs what is missing, runs the checks and tests, and ends with one line of totals. --whole runs every
// test, --long every one of them at full count.
import { spawn, spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import {
  browserAdvice,
  canInstallBrowser,
  findBrowser,
  installBrowser,
} from '../src/dev/browser.mjs'
import { buildApp } from '../src/dev/buildApp.mjs'
import { installPackages, packagesInstalled } from '../src/dev/packages.mjs'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const cache = join(root, '.cache')
const totals = { passed: 0, failed: 0, skipped: 0 }
const add = ({ passed = 0, failed = 0, skipped = 0 }) => {
  totals.passed += passed
  totals.failed += failed
  totals.skipped += skipped
}
if (process.argv.includes('--whole')) process.env.HOLDFAST_WHOLE = '1'
if (process.argv.includes('--long')) process.env.HOLDFAST_LONG = '1'
const whole = process.env.HOLDFAST_WHOLE === '1' || process.env.HOLDFAST_LONG === '1'

if (prepare()) await runAll()
if (totals.skipped > 0)
  console.log(
    `${totals.skipped} skipped${whole ? '' : ', most of them left to npm run test:whole'}`,
  )
console.log(`${totals.passed} passed, ${totals.failed} failed`)
process.exitCode = totals.failed === 0 ? 0 : 1

/** Installs what is missing, after saying so in one line; false where that was not possible. */
function prepare() {
  const packages = !packagesInstalled(root)
  const browser = findBrowser() === undefined
  const byApt = browser && canInstallBrowser() && !process.env.CHROMIUM
  const named = process.env.CHROMIUM
  const missing = [
    ...(packages ? ['the Node packages of package-lock.json (npm ci)'] : []),
    ...(browser && byApt ? ['Chromium from Debian (apt-get)'] : []),
    ...(browser && !byApt
      ? [named ? `a browser (CHROMIUM names ${named}, which cannot be run)` : 'a browser']
      : []),
  ].join(' and ')
  if (missing === '') {
    console.log('Nothing to install.')
    return true
  }
  if (process.env.HOLDFAST_NO_INSTALL === '1')
    return stop(`Missing: ${missing}. HOLDFAST_NO_INSTALL is set, so nothing was installed.`)
  if (browser && !byApt) return stop(`Missing: ${missing}; ${browserAdvice}.`)
  console.log(`Installing ${missing}.`)
  try {
    if (packages) installPackages(root)
    if (byApt) installBrowser()
  } catch (error) {
    return stop(error.message)
  }
  return findBrowser() !== undefined || stop(`No browser after all: ${browserAdvice}.`)
}

function stop(why) {
  console.log(why)
  add({ failed: 1 })
  return false
}

async function runAll() {
  mkdirSync(cache, { recursive: true })
  // the browser waits a good part of its time, and checks use one processor: both run beside the unit tests
  const tested = vitest()
  const app = built()
  if (app) add(await playwright())
  const good = { built: app, ...(await checks()) }
  for (const one of Object.values(good)) add(one ? { passed: 1 } : { failed: 1 })
  add(await tested)
}

async function checks() {
  const types = await step('type check', 'vue-tsc', 'vue-tsc/bin/vue-tsc.js', ['--noEmit'])
  const typed = await step('lint with types', 'oxlint', 'oxlint/bin/oxlint', ['.'])
  // who waits has changed a few files; all of them are read over in the whole run and by npm run lint
  const files = whole ? ['.'] : changedFiles()
  const code = files.filter((name) => name === '.' || /\.(js|mjs|ts|vue)$/.test(name))
  const style =
    code.length === 0 ||
    (await step('lint', 'eslint', 'eslint/bin/eslint.js', ['--no-warn-ignored', ...code]))
  const format =
    files.length === 0 ||
    (await step('format', 'prettier', 'prettier/bin/prettier.cjs', [
      ...['--check', '--log-level', 'warn', '--ignore-unknown', ...files],
    ]))
  const unused = await step('nothing unused', 'knip', 'knip/bin/knip.js', ['--no-progress'])
  return { types, style: style && typed && format, unused }
}

/** Files that differ from the last commit, whose lint and format the usual run looks at; all where git cannot say. */
function changedFiles() {
  const git = (...words) => spawnSync('git', [...words, '-z'], { cwd: root, encoding: 'utf8' })
  const lists = [
    git('diff', '--name-only', '--relative', '--diff-filter=d', 'HEAD'),
    git('ls-files', '--others', '--exclude-standard'),
  ]
  if (lists.some(({ status }) => status !== 0)) return ['.']
  return lists.flatMap(({ stdout }) => stdout.split('\0').filter((name) => name !== ''))
}

function built() {
  try {
    buildApp(root)
    return true
  } catch (error) {
    console.log(error.message)
    return false
  }
}

async function vitest() {
  const out = join(cache, 'vitest.json')
  rmSync(out, { force: true })
  const good = await step('unit, law, case and command-line tests', 'vitest', 'vitest/vitest.mjs', [
    ...['run', '--maxWorkers=2', '--reporter=default', '--reporter=json'],
    `--outputFile.json=${out}`,
  ])
  const report = readReport(out)
  const empty = (report?.testResults ?? []).filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  )
  return atLeastOneFailure(good, {
    passed: report?.numPassedTests ?? 0,
    failed: (report?.numFailedTests ?? 0) + empty.length,
    skipped: (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0),
  })
}

async function playwright() {
  const out = join(cache, 'playwright.json')
  rmSync(out, { force: true })
  process.env.PLAYWRIGHT_JSON_OUTPUT_NAME = out
  process.env.HOLDFAST_TEST_PORT ??= String(await freePort())
  const good = await step('browser tests', 'playwright', '@playwright/test/cli.js', [
    ...['test', '--reporter=list,json'],
  ])
  const stats = readReport(out)?.stats
  return atLeastOneFailure(good, {
    passed: (stats?.expected ?? 0) + (stats?.flaky ?? 0),
    failed: stats?.unexpected ?? 0,
    skipped: stats?.skipped ?? 0,
  })
}

/** A run that ended badly has failed, whatever its report counts. */
function atLeastOneFailure(good, counts) {
  return { ...counts, failed: good ? counts.failed : Math.max(1, counts.failed) }
}

function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return undefined
  }
}

/** Runs a tool of the project and says how it went; its output is shown as it comes. */
function step(title, name, script, words) {
  const started = Date.now()
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(root, 'node_modules', script), ...words], {
      cwd: root,
      stdio: ['ignore', 'inherit', 'inherit'],
    })
    const done = (good, why) => {
      const seconds = ((Date.now() - started) / 1000).toFixed(1)
      console.log(`${title} (${name}): ${good ? 'good' : why} after ${seconds} s`)
      resolve(good)
    }
    child.on('error', (error) => {
      done(false, error.message)
    })
    child.on('close', (code) => {
      done(code === 0, `failed with ${code}`)
    })
  })
}

function freePort() {
  return new Promise((resolve, reject) => {
    const server = createServer().on('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address()
      server.close(() => {
        resolve(port)
      })
    })
  })
}
