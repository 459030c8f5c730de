import { openDatabase, type Database } from './database'
import { keepIn, type Writing, type Written } from './keep'

// Writes sheets to the shelf, so that the page that is typed into and dragged on need not.

let database: Promise<Database> | undefined

const lost = (): void => {
  database = undefined
}

async function write({ n, id, sheet, base }: Writing): Promise<Written> {
  try {
    database ??= openDatabase(lost).catch((error: unknown) => {
      // the next writing tries to open it anew
      lost()
      throw error
    })
    return { n, keeping: await keepIn(await database, id, sheet, base) }
  } catch (error) {
    const { name, message } = error instanceof Error ? error : new Error(String(error))
    return { n, failed: { name, message } }
  }
}

addEventListener('message', ({ data }: MessageEvent<Writing>) => {
  void write(data).then((written) => {
    postMessage(written)
  })
})
