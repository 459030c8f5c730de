#!/usr/bin/env node
// Starts the command line: builds it when its sources are newer, then runs it in this process.
import { pathToFileURL } from 'node:url'
import { builtCommandLine } from './build.mjs'

let bundle
try {
  bundle = builtCommandLine()
} catch (error) {
  process.stderr.write(`holdfast cannot start: ${error.message}\n`)
  process.exitCode = 3
}
if (bundle !== undefined) await import(pathToFileURL(bundle).href)
