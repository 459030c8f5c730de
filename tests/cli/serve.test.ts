import {
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  readlinkSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { request, type OutgoingHttpHeaders } from 'node:http'
import { join } from 'node:path'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { compressFolder } from '../../src/dev/compressed.mjs'
import { contentPolicy, fileServer, listen } from '../../src/dev/serve.mjs'
import { freshFolder } from './shell'

const folder = freshFolder()
const root = join(folder, 'built')
mkdirSync(join(root, 'deep'), { recursive: true })
mkdirSync(join(root, 'assets'))
writeFileSync(join(root, 'index.html'), '<p>index</p>')
writeFileSync(join(root, 'deep', 'index.html'), '<p>deep</p>')
for (const name of ['a.js', 'a.css', 'a.wasm', 'a.woff2', 'a.svg', 'a b.txt', 'a.unknown'])
  writeFileSync(join(root, name), name)
for (const name of ['a-Dfj6TkU-.wasm', 'by-hand.js'])
  writeFileSync(join(root, 'assets', name), name)
writeFileSync(join(folder, 'secret.txt'), 'secret')
writeFileSync(join(folder, 'built-beside.txt'), 'secret')
symlinkSync(join(folder, 'secret.txt'), join(root, 'link.txt'))

const server = fileServer(root)
let address = ''
beforeAll(async () => {
  address = await listen(server, 0, true)
})
afterAll(() => {
  server.close()
})

/** Asks for a path exactly as written; `fetch` would tidy it first. */
function ask(path: string, method = 'GET', headers: OutgoingHttpHeaders = {}) {
  const { port } = new URL(address)
  return new Promise<{
    status: number
    body: string
    bytes: Buffer
    headers: Record<string, unknown>
  }>((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (data: Buffer) => parts.push(data))
      response.on('end', () => {
        const bytes = Buffer.concat(parts)
        const body = bytes.toString()
        resolve({ status: response.statusCode ?? 0, body, bytes, headers: response.headers })
      })
    })
    asked.on('error', reject).end()
  })
}

describe('the server of the built app', () => {
  test.each([
    ['/', 'text/html; charset=utf-8'],
    ['/deep', 'text/html; charset=utf-8'],
    ['/a.js?v=1', 'text/javascript; charset=utf-8'],
    ['/a.css', 'text/css; charset=utf-8'],
    ['/a.wasm', 'application/wasm'],
    ['/a.woff2', 'font/woff2'],
    ['/a.svg', 'image/svg+xml'],
    ['/a%20b.txt', 'text/plain; charset=utf-8'],
    ['/a.unknown', 'application/octet-stream'],
  ])('%s as %s', async (path, type) => {
    const { status, headers } = await ask(path)
    expect(status).toBe(200)
    expect(headers['content-type']).toBe(type)
    expect(headers['content-security-policy']).toBe(contentPolicy)
  })

  test.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/../built-beside.txt',
    '/link.txt',
    '/nothing',
    '/deep/../../secret.txt',
  ])('%s is not there', async (path) => {
    const { status, body } = await ask(path)
    expect(status).toBe(404)
    expect(body).not.toContain('secret')
  })

  test.each([
    ['/assets/a-Dfj6TkU-.wasm', 'public, max-age=31536000, immutable'],
    ['/assets/by-hand.js', 'no-cache'],
    ['/a.js', 'no-cache'],
    ['/', 'no-cache'],
    ['/nothing', 'no-cache'],
  ])('%s is kept by the browser: %s', async (path, rule) => {
    expect((await ask(path)).headers['cache-control']).toBe(rule)
  })

  test('an address that cannot be read, and a method that is not for files', async () => {
    expect((await ask('/%')).status).toBe(400)
    expect((await ask('/a%00.js')).status).toBe(400)
    expect((await ask('/', 'POST')).status).toBe(405)
    expect(await ask('/a.js', 'HEAD')).toMatchObject({ status: 200, body: '' })
  })

  test('no script or style from elsewhere, none in the page, no framing', () => {
    expect(contentPolicy).toContain("default-src 'self'")
    expect(contentPolicy).toContain("script-src 'self' 'wasm-unsafe-eval'")
    expect(contentPolicy).toContain("frame-ancestors 'none'")
    expect(contentPolicy).not.toMatch(/unsafe-inline|https?:|\*/)
  })

  test('a port that is taken: the next one, or a refusal where it was chosen', async () => {
    const taken = Number(new URL(address).port)
    await expect(listen(fileServer(root), taken, true)).rejects.toThrow(`port ${taken} is taken`)
    const other = fileServer(root)
    const next = await listen(other, taken, false)
    expect(Number(new URL(next).port)).toBeGreaterThan(taken)
    other.close()
  })

  test('answers to this machine by its names and its port, and to no other name', async () => {
    const { port } = new URL(address)
    for (const host of [`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`])
      expect((await ask('/a.js', 'GET', { host })).status, host).toBe(200)
    for (const host of [
      ...['127.0.0.1', 'localhost', `example.org:${port}`, `127.0.0.1.example.org:${port}`],
      ...[`localhost:${Number(port) + 1}`, `localhost.:${port}`, `a@localhost:${port}`],
    ]) {
      const { status, body } = await ask('/a.js', 'GET', { host })
      expect([status, body.includes('a.js')], host).toEqual([421, false])
    }
    expect((await ask('/a.js')).headers['cross-origin-resource-policy']).toBe('same-origin')
  })

  test.runIf(existsSync('/proc/self/fd'))(
    'closes its files when those who asked have gone, two hundred of them',
    async () => {
      const large = join(root, 'large.bin')
      writeFileSync(large, Buffer.alloc(8_000_000, 1))
      const { port } = new URL(address)
      const leave = () =>
        new Promise<void>((gone) => {
          const asked = request({ host: '127.0.0.1', port, path: '/large.bin' }, (response) => {
            response.once('data', () => asked.destroy())
            response.on('error', () => undefined).on('close', gone)
          })
          asked.on('error', () => undefined).end()
        })
      await Promise.all(Array.from({ length: 200 }, leave))
      const open = () =>
        readdirSync('/proc/self/fd').filter((entry) => {
          try {
            return readlinkSync(`/proc/self/fd/${entry}`) === large
          } catch {
            return false
          }
        }).length
      await expect.poll(open, { timeout: 20_000 }).toBe(0)
      expect((await ask('/large.bin')).bytes.length).toBe(8_000_000)
    },
  )
})

describe('what is sent compressed', () => {
  const text = 'A line of a program that stands there many times.\n'.repeat(200)
  writeFileSync(join(root, 'long.js'), text)
  writeFileSync(join(root, 'long.png'), text)
  const opened: Record<string, (bytes: Buffer) => string> = {
    br: (bytes) => brotliDecompressSync(bytes).toString(),
    gzip: (bytes) => gunzipSync(bytes).toString(),
    none: (bytes) => bytes.toString(),
  }

  test.each([
    ['br, gzip', 'br'],
    ['gzip, deflate, br;q=0.9', 'br'],
    ['gzip;q=0.5, br;q=0', 'gzip'],
    ['*', 'br'],
    ['*;q=0, gzip', 'gzip'],
    ['deflate', 'none'],
    ['identity', 'none'],
    ['br;q=nonsense', 'none'],
    [undefined, 'none'],
  ])('a browser that takes %s is sent %s, the same file with the same head', async (takes, way) => {
    const headers = takes === undefined ? {} : { 'accept-encoding': takes }
    const { status, bytes, headers: got } = await ask('/long.js', 'GET', headers)
    expect(status).toBe(200)
    expect(got['content-encoding'] ?? 'none').toBe(way)
    expect(opened[way]?.(bytes)).toBe(text)
    expect(got['content-length']).toBe(String(bytes.length))
    expect(got.vary).toBe('Accept-Encoding')
    const head = await ask('/long.js', 'HEAD', headers)
    expect(head.body).toBe('')
    for (const name of ['content-length', 'content-encoding', 'vary', 'content-type'])
      expect(head.headers[name]).toBe(got[name])
  })

  test('not what is small, or a picture; and whoever asks for a part gets the whole', async () => {
    const headers = { 'accept-encoding': 'br, gzip', range: 'bytes=5-9' }
    for (const path of ['/a.js', '/long.png'])
      expect((await ask(path, 'GET', headers)).headers).not.toHaveProperty('content-encoding')
    const { status, bytes, headers: got } = await ask('/long.js', 'GET', headers)
    expect([status, got['accept-ranges'], opened.br?.(bytes)]).toEqual([200, 'none', text])
  })

  test('what was compressed beforehand is sent as it stands, until the file is another', async () => {
    const built = join(root, 'beforehand')
    mkdirSync(built)
    const file = join(built, 'page.js')
    writeFileSync(file, text)
    await compressFolder(built)
    expect(readdirSync(built)).toEqual(['page.js', 'page.js.br', 'page.js.gz'])
    for (const [way, ending] of [
      ['br', 'br'],
      ['gzip', 'gz'],
    ] as const) {
      const { bytes } = await ask('/beforehand/page.js', 'GET', { 'accept-encoding': way })
      expect(bytes.equals(readFileSync(`${file}.${ending}`)), way).toBe(true)
      expect(opened[way]?.(bytes)).toBe(text)
    }
    writeFileSync(file, `${text}newer`)
    utimesSync(file, new Date(), new Date(Date.now() + 5000))
    const { bytes } = await ask('/beforehand/page.js', 'GET', { 'accept-encoding': 'br' })
    expect(opened.br?.(bytes)).toBe(`${text}newer`)
    // compressed again, nothing is compressed twice
    await compressFolder(built)
    expect(readdirSync(built)).toHaveLength(3)
  })

  test('is the file as it is now', async () => {
    const file = join(root, 'changed.js')
    for (const content of [text, `${text}and more\n`]) {
      writeFileSync(file, content)
      const { bytes } = await ask('/changed.js', 'GET', { 'accept-encoding': 'gzip' })
      expect(opened.gzip?.(bytes)).toBe(readFileSync(file, 'utf8'))
    }
  })
})
