import { expect, test } from '@playwright/test'
import { budget, firstLoad } from '../../src/dev/weight.mjs'
import { openSheet } from './sheet'

test('until its first plan the page fetches what the budget counts, and that is within it', async ({
  page,
}) => {
  const counted = firstLoad('dist').map(({ file }) => file)
  expect(firstLoad('dist').reduce((sum, { sent }) => sum + sent, 0)).toBeLessThanOrEqual(budget)
  const fetched: string[] = []
  page.on('request', (request) => {
    fetched.push(new URL(request.url()).pathname.slice(1) || 'index.html')
  })
  await openSheet(page)
  // without its solver there is no plan: what was asked for before it came before the plan
  const before = fetched.slice(0, fetched.findIndex((file) => file.endsWith('.wasm')) + 1)
  expect(before.filter((file) => !counted.includes(file))).toEqual([])
  expect(counted.filter((file) => !fetched.includes(file))).toEqual([])
})
