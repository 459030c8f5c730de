import { isMainThread, parentPort } from 'node:worker_threads'
import { isOutputClosed } from './closedOutput'
import { answerLost } from './exitStatus'
import { answerJobs } from './fileJob'
import { fileErrorText } from './readFile'
import { run } from './run'

// Many files are planned by workers that run this same bundle.
if (isMainThread) await command()
else if (parentPort) await answerJobs(parentPort)

async function command(): Promise<void> {
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
    output: process.stdout,
    print: (text) => process.stdout.write(text),
    complain: (text) => process.stderr.write(text),
    // on the terminal that shows the answers too it would stand between them
    progress:
      process.stderr.isTTY && !process.stdout.isTTY
        ? (text) => process.stderr.write(`\r${text}\u001b[K`)
        : undefined,
  })

  // what was printed is on its way until this has been written too
  await new Promise((written) => process.stdout.write('', written))
  const closed = isOutputClosed()
  process.exitCode = lost === undefined && !closed ? status : answerLost
  if (closed)
    process.stderr.write('stopped: standard output is closed: the answer reached nobody\n')
  // a reader that has seen enough, such as `head`, is no reason to complain
  if (lost !== undefined && lost.code !== 'EPIPE')
    process.stderr.write(`stopped: standard output cannot be written: ${fileErrorText(lost)}\n`)
}
