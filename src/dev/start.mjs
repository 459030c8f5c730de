// npm start: installs what is missing, builds the app when its sources have changed, serves it on
// this machine and prints the address. PORT chooses the port.
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { buildApp } from './buildApp.mjs'
import { installPackages, packagesInstalled } from './packages.mjs'
import { serveUntilStopped } from './serve.mjs'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))

try {
  if (!packagesInstalled(root)) {
    if (process.env.HOLDFAST_NO_INSTALL === '1')
      throw new Error('the Node packages are missing or out of date: run "npm ci"')
    console.log('Installing the Node packages (npm ci) ...')
    installPackages(root)
  }
  if (buildApp(root)) console.log('Built the app.')
  await serveUntilStopped(join(root, 'dist'), (address) => {
    console.log(`Holdfast is at ${address} (Ctrl-C ends it)`)
  })
} catch (error) {
  console.error(`Holdfast could not start: ${error.message}`)
  process.exitCode = 1
}
