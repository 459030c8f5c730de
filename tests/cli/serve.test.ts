import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { contentPolicy, fileServer, listen } from '../../src/dev/serve.mjs'
import { freshFolder } from './shell'

const folder = freshFolder()
const root = join(folder, 'built')
mkdirSync(join(root, 'deep'), { recursive: true })
writeFileSync(join(root, 'index.html'), '<p>index</p>')
writeFileSync(join(root, 'deep', 'index.html'), '<p>deep</p>')
for (const name of ['a.js', 'a.css', 'a.wasm', 'a.woff2', 'a.svg', 'a b.txt', 'a.unknown'])
  writeFileSync(join(root, name), name)
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
function ask(path: string, method = 'GET') {
  const { port } = new URL(address)
  return new Promise<{ status: number; body: string; headers: Record<string, unknown> }>(
    (resolve, reject) => {
      const asked = request({ host: '127.0.0.1', port, path, method }, (response) => {
        let body = ''
        response.on('data', (data: Buffer) => {
          body += data.toString()
        })
        response.on('end', () => {
          resolve({ status: response.statusCode ?? 0, body, headers: response.headers })
        })
      })
      asked.on('error', reject).end()
    },
  )
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
})
