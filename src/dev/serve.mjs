// Serves a folder of built files on this machine, under the content rules the app is made for.
// Run by itself it serves dist/ at PORT: node src/dev/serve.mjs
import { createReadStream } from 'node:fs'
import { realpath, stat } from 'node:fs/promises'
import { createServer } from 'node:http'
import { basename, dirname, join, sep } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { fileURLToPath } from 'node:url'
import { compressed, encodingFor, isCompressible } from './compressed.mjs'
import { plainText, typeOf } from './mediaTypes.mjs'

/** Nothing comes from elsewhere and nothing goes there; the solver is WebAssembly in a worker. */
export const contentPolicy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

const headers = {
  'Content-Security-Policy': contentPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
}

/** A server of the files under `folder`; it listens where its caller says. */
export function fileServer(folder) {
  return createServer((request, response) => {
    answer(folder, request, response).catch(() => {
      if (!response.headersSent) plain(response, 500, 'the file could not be read')
      else response.destroy()
    })
  })
}

async function answer(folder, request, response) {
  if (!isOwnName(request))
    return plain(response, 421, 'this server answers to 127.0.0.1 and localhost alone')
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return plain(response, 405, 'only GET and HEAD', { Allow: 'GET, HEAD' })
  const path = pathOf(request.url)
  if (path === undefined) return plain(response, 400, 'not an address')
  const file = await fileUnder(folder, path)
  if (!file) return plain(response, 404, 'no such file')
  const type = typeOf(file.path)
  const worth = isCompressible(type, file.size)
  const way = worth ? encodingFor(request.headers['accept-encoding']) : undefined
  const bytes = way === undefined ? undefined : await compressed(file, way)
  response.writeHead(200, {
    ...headers,
    'Cache-Control': cacheRule(file.path),
    'Content-Type': type,
    'Content-Length': bytes?.length ?? file.size,
    // a part of a compressed file is no part of the file: whoever asks for a part gets the whole
    'Accept-Ranges': 'none',
    ...(worth ? { Vary: 'Accept-Encoding' } : {}),
    ...(way === undefined ? {} : { 'Content-Encoding': way }),
  })
  if (request.method === 'HEAD') return response.end()
  if (bytes !== undefined) return response.end(bytes)
  // closes the file too where the browser goes away in the middle; nobody is left to be told then
  await pipeline(createReadStream(file.path), response).catch(() => response.destroy())
}

/**
 * How long a browser may keep a file: what the build names by its contents (assets/name-hash.type) never changes under its
 * name and is kept for good; all else is asked for again.
 */
const cacheRule = (path) =>
  path.includes(`${sep}assets${sep}`) && /-[\w-]{8}\.\w+$/.test(basename(path))
    ? 'public, max-age=31536000, immutable'
    : headers['Cache-Control']

/**
 * Whether a request names this machine. A page from elsewhere whose name was made to lead here would
 * otherwise be of one origin with the app.
 */
function isOwnName({ headers: { host }, socket }) {
  const { localPort } = socket
  return ['127.0.0.1', 'localhost', '[::1]'].some(
    (name) => host === `${name}:${localPort}` || (localPort === 80 && host === name),
  )
}

/** The path of a request without its query; undefined when it cannot be read. */
function pathOf(url) {
  try {
    const path = decodeURIComponent((url ?? '/').split(/[?#]/)[0])
    return path.startsWith('/') && !path.includes('\0') ? path : undefined
  } catch {
    return undefined
  }
}

/** The file at a path, or the index of a folder; undefined outside `folder`, links included. */
async function fileUnder(folder, path) {
  try {
    const root = await realpath(folder)
    let full = await realpath(join(root, path))
    if (full !== root && !full.startsWith(root + sep)) return undefined
    let found = await stat(full)
    if (found.isDirectory()) {
      full = join(full, 'index.html')
      found = await stat(full)
    }
    return found.isFile() ? { path: full, size: found.size, changed: found.mtimeMs } : undefined
  } catch {
    return undefined
  }
}

function plain(response, status, text, more = {}) {
  response.writeHead(status, { ...headers, ...more, 'Content-Type': plainText })
  response.end(`${text}\n`)
}

/**
 * Listens on this machine alone.
 * @param port the port wanted; `strict` takes that one or fails, otherwise the next free one is taken
 * @returns the address
 */
export function listen(server, port, strict) {
  return new Promise((resolve, reject) => {
    let attempt = port
    server.on('error', (error) => {
      if (error.code === 'EADDRINUSE' && !strict && attempt < port + 100)
        server.listen(++attempt, '127.0.0.1')
      else if (error.code === 'EADDRINUSE')
        reject(new Error(`port ${attempt} is taken: set PORT to another one`))
      else if (error.code === 'EACCES')
        reject(new Error(`port ${attempt} may not be used: set PORT to one above 1023`))
      else reject(error)
    })
    server.on('listening', () => {
      resolve(`http://127.0.0.1:${server.address().port}/`)
    })
    server.listen(attempt, '127.0.0.1')
  })
}

/** The port that PORT chooses, strictly; otherwise the usual one or the next that is free. */
export function portWanted() {
  const given = process.env.PORT
  if (given === undefined || given === '') return { port: 5173, strict: false }
  const port = Number(given)
  if (!/^\d+$/.test(given) || port > 65535)
    throw new Error(`PORT is ${JSON.stringify(given)}: give a number from 0 to 65535`)
  return { port, strict: true }
}

/** Serves until the process is told to stop. */
export async function serveUntilStopped(folder, say) {
  const { port, strict } = portWanted()
  const server = fileServer(folder)
  say(await listen(server, port, strict))
  for (const signal of ['SIGINT', 'SIGTERM'])
    process.once(signal, () => {
      server.close(() => process.exit(0))
      server.closeAllConnections()
    })
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
  serveUntilStopped(join(root, 'dist'), (address) => {
    console.log(`serving dist at ${address}`)
  }).catch((error) => {
    console.error(error.message)
    process.exitCode = 1
  })
}
