import { expect, test } from '@playwright/test'
import { firstOf } from '../counts'
import { longTrain } from '../holds/longTrain'
import { chooseExample, drawn, openSheet, openText, resized, watch, worked } from './sheet'

// The first window answers what is done at each foot, whether it may begin, what was not entered and what is fixed.

const windows = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
]

/** Nine machines, more than any example has. */
const nine = longTrain(9)

test('at 1440 and 1024 px the whole foot table stands in the first window', async ({ page }) => {
  const seen = watch(page)
  await openSheet(page)
  for (const file of firstOf(['nine', 'skid-as-one.json', 'five-in-a-line.json'], 2, 3)) {
    if (file === 'nine') {
      await openText(page, 'nine.json', JSON.stringify(nine))
      await expect(page.locator('.train-name')).toHaveText(nine.name)
      await drawn(page)
    } else await chooseExample(page, file)
    await worked(page)
    for (const size of windows) {
      const at = `${file} at ${size.width} px`
      await resized(page, size)
      await page.evaluate(() => {
        window.scrollTo(0, 0)
      })
      const drawer = await page.locator('.drawer-pull').boundingBox()
      const end = drawer?.y ?? size.height
      const rows = page.locator('.foot-groups tbody tr')
      expect(await rows.count()).toBeGreaterThan(3)
      for (const part of ['.sentence h1', '.foot-groups', '.plan-facts']) {
        const box = await page.locator(part).boundingBox()
        expect(box, `${at}: ${part}`).not.toBeNull()
        const [right, bottom] = [
          (box?.x ?? 0) + (box?.width ?? Infinity),
          (box?.y ?? 0) + (box?.height ?? Infinity),
        ]
        expect(bottom, `${at}: ${part}`).toBeLessThanOrEqual(end)
        expect(right, `${at}: ${part}`).toBeLessThanOrEqual(size.width)
      }
      await expect(page.locator('.plan-facts')).toContainText(/(Not ready|Ready): /)
      await expect(page.locator('.plan-facts')).toContainText(/not entered|Everything is entered/)
      await expect(page.locator('.plan-facts')).toContainText(/Fixed: |Nothing is fixed/)
      // the head is one row
      const head = await page.locator('.top-bar').boundingBox()
      expect(head?.height ?? Infinity, at).toBeLessThan(56)
    }
  }
  expect(seen.faults).toEqual([])
})

test('keys alone reach every band, what was not entered, and the cell of what is missing', async ({
  page,
}) => {
  await openSheet(page)
  await worked(page)
  await page.keyboard.press('Tab')
  await expect(page.getByRole('button', { name: 'To each foot' })).toBeFocused()
  await page.keyboard.press('Enter')
  const focused = () => page.evaluate(() => document.activeElement?.id)
  expect(await focused()).toBe('band-each-foot')
  const visited: unknown[] = []
  for (let i = 0; i < 9; i++) {
    await page.keyboard.press('Alt+PageDown')
    visited.push(await focused())
  }
  expect(visited).toEqual(
    ['train', 'rise', 'side', 'feet', 'couplings', 'next', 'ready', 'order', 'record'].map(
      (band) => `band-${band}`,
    ),
  )
  await page.keyboard.press('Alt+PageUp')
  expect(await focused()).toBe('band-order')

  // what was not entered is one press away, and each line leads to its cell
  await page.getByRole('button', { name: /not entered$/ }).press('Enter')
  const list = page.locator('#not-entered li')
  await expect(list.first()).toBeVisible()
  for (let i = 0; i < (await list.count()); i++) {
    await list.nth(i).getByRole('button').press('Enter')
    expect(
      await page.evaluate(() => document.activeElement?.closest('.figures') !== null),
      (await list.nth(i).textContent()) ?? '',
    ).toBe(true)
    // what was not entered has nothing in its cell, but for a place that was taken and not measured
    const words = (await list.nth(i).textContent()) ?? ''
    if (!words.includes('flex plane'))
      expect(
        await page.evaluate(() => {
          const at = document.activeElement
          return at instanceof HTMLInputElement && at.type === 'text' ? at.value : ''
        }),
        words,
      ).toBe('')
  }
  // and so does what keeps the work from beginning
  await page.getByRole('button', { name: /^Not ready/ }).press('Enter')
  expect(await focused()).toBe('band-ready')
  await page
    .getByRole('button', { name: /^enter soft foot/ })
    .first()
    .press('Enter')
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-at') ?? '')).toMatch(
    /^machines\[\d\]\.feet\[0\]\.soft/,
  )
  await page
    .getByRole('button', { name: /^enter pipe strain/ })
    .first()
    .press('Enter')
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-at') ?? '')).toMatch(
    /^couplings\[\d\]\.strain/,
  )
})

test(
  'machines of a long train that lie beyond the window are counted, and brought into sight',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    await openText(page, 'nine.json', JSON.stringify(nine))
    await expect(page.locator('.train-name')).toHaveText(nine.name)
    await drawn(page)
    const told = page.locator('.band-train .band-name p > .act')
    /** Machines whose head has its middle right of the sheet, as the browser has laid them out. */
    const rightOf = () =>
      page.evaluate(() => {
        const edge = document.querySelector('.page')?.getBoundingClientRect().right ?? 0
        const middles = [...document.querySelectorAll('.band-train .heads > li')].map((head) => {
          const { left, width } = head.getBoundingClientRect()
          return left + width / 2
        })
        return { all: middles.length, right: middles.filter((x) => x > edge).length }
      })
    for (const width of [1440, 1024, 390]) {
      await resized(page, { width, height: 844 })
      const { all, right } = await rightOf()
      expect(all).toBe(9)
      expect(right, `${width} px`).toBeGreaterThan(0)
      await expect(told).toHaveText(`${right} more machines to the right`)
    }
    await resized(page, { width: 1440, height: 900 })
    await told.click()
    await expect(told).toHaveText(/^\d more machines? to the left$/)
    expect((await rightOf()).right).toBe(0)
    await told.click()
    await expect(told).toHaveText(/^\d more machines to the right$/)
  },
)
