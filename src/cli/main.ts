import { isOutputClosed } from './closedOutput'
import { fileErrorText } from './readFile'
import { answerLost, run } from './run'

/** Why an answer did not reach standard output; the first reason counts. */
let lost: NodeJS.ErrnoException | undefined
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  lost ??= error
})
process.stderr.on('error', () => undefined)

/** Under `npm run holdfast` file names count from where npm was called, not from the package. */
const folder =
  process.env.npm_lifecycle_event === 'holdfast'
    ? (process.env.INIT_CWD ?? process.cwd())
    : process.cwd()

const status = await run(process.argv.slice(2), {
  folder,
  input: process.stdin,
  print: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
})

// what was printed is on its way until this has been written too
await new Promise((written) => process.stdout.write('', written))
const closed = isOutputClosed()
process.exitCode = lost === undefined && !closed ? status : answerLost
if (closed) process.stderr.write('stopped: standard output is closed: the answer reached nobody\n')
// a reader that has seen enough, such as `head`, is no reason to complain
if (lost !== undefined && lost.code !== 'EPIPE')
  process.stderr.write(`stopped: standard output cannot be written: ${fileErrorText(lost)}\n`)
