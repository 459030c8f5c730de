import { execFileSync } from 'node:child_process'
import AxeBuilder from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import { chooseExample, openSheet, watch } from './sheet'

/** What the command line says of the same file, on one line. */
const told = (file: string): string =>
  execFileSync('node', ['src/cli/holdfast.mjs', 'plan', `examples/${file}`, '--sure'], {
    encoding: 'utf8',
  }).replace(/\s+/g, ' ')

test(
  'the sheet tells the chance that the command line tells, and what it hangs on',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await chooseExample(page, 'piped-compressor.json')
    const panel = page.locator('.note.sure')
    // chances along the curve come last
    await expect(page.locator('.chance-key')).toBeVisible()
    const text = told('piped-compressor.json')
    const lines = await panel.locator('p:not(.soft), li:not(.assumed li)').allInnerTexts()
    expect(lines.length).toBeGreaterThan(6)
    for (const line of lines) expect(text).toContain(line.replace(/\s+/g, ' ').trim())
    const first = lines[0] ?? ''
    expect(first).toMatch(/^About \d+\s% that every state is in at the first run/)
    await expect(page.locator('.sentence')).toContainText(first)
    await expect(page.locator('.hold-choice').first()).toContainText('that every state is in')
    await expect(page.locator('.sure-band').first()).toBeAttached()
    const scan = await new AxeBuilder({ page }).include('.ledger').analyze()
    expect(scan.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([])
    expect(seen.faults).toEqual([])
  },
)

test(
  'a usual uncertainty is entered where it is told, and the chance follows',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    await chooseExample(page, 'piped-compressor.json')
    const panel = page.locator('.note.sure')
    await expect(page.locator('.chance-key')).toBeVisible()
    const before = await panel.locator('p').first().innerText()
    await panel.getByText('Usual uncertainties').click()
    await panel.getByRole('button', { name: 'enter Shim as put in' }).click()
    const cell = page.getByLabel('shims as put in, unsure by')
    await expect(cell).toBeFocused()
    await page.keyboard.type('40')
    await page.keyboard.press('Enter')
    await expect(panel.locator('p').first()).not.toHaveText(before)
    await expect(panel).not.toContainText('Shim as put in: 10')
  },
)

test(
  'a chance that is asked for makes a closer plan, and says at which share',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    await chooseExample(page, 'piped-compressor.json')
    await page.getByRole('button', { name: 'Enter plan settings' }).click()
    await page.getByLabel('chance wanted that every state is in').click()
    await page.keyboard.type('0.65')
    await page.keyboard.press('Enter')
    const panel = page.locator('.note.sure')
    await expect(panel).toContainText(/65\s% asked for (it keeps to|is reached at) \d+\s%/)
    const share = Number(/(?:keeps to|reached at) (\d+)/.exec(await panel.innerText())?.[1])
    expect(share).toBeLessThan(70)
    // rounded it uses no more
    const moves = await page.locator('.sentence .moves').innerText()
    expect(Number(/uses (\d+)\s%/.exec(moves)?.[1])).toBeLessThanOrEqual(share)
  },
)
