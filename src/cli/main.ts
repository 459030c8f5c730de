import { run } from './run'

// The solver package reports trouble through console.log; standard output belongs to the answer.
console.log = console.error

// A reader that has seen enough, such as `head`, is no reason to complain.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
  process.exit()
})
process.stderr.on('error', () => undefined)

/** Under `npm run holdfast` file names count from where npm was called, not from the package. */
const folder =
  process.env.npm_lifecycle_event === 'holdfast'
    ? (process.env.INIT_CWD ?? process.cwd())
    : process.cwd()

process.exitCode = await run(process.argv.slice(2), {
  folder,
  input: process.stdin,
  print: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
})
