import AxeBuilder from '@axe-core/playwright'
import { expect, test, type Page } from '@playwright/test'
import { chooseExample, drawn, openSheet, watch } from './sheet'

const gearTrain = 'bolt-bound-gearbox.json'
const lay = (page: Page, band: string) =>
  page.locator(`.figures-button[data-enters="${band}"]`).click()
const cell = (page: Page, at: string) => page.locator(`input[data-at="${at}"]`)
const hole = (page: Page) => page.locator('[data-part="hole"]')

async function open(page: Page, ...bands: string[]): Promise<void> {
  await openSheet(page)
  await chooseExample(page, gearTrain)
  for (const band of bands) await lay(page, band)
}

test('a pack is changed by keys alone, and by mouse as on a spreadsheet; the plan follows', async ({
  page,
}) => {
  const seen = watch(page)
  await open(page)
  const before = await page.locator('.moves').textContent()
  const button = page.locator('.figures-button[data-enters="feet"]')
  await button.focus()
  await page.keyboard.press('Enter')
  await cell(page, 'machines[0].feet[2].x').focus()
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight')
  await expect(cell(page, 'machines[0].feet[2].pack.min')).toBeFocused()
  await page.keyboard.press('ArrowLeft')
  await expect(cell(page, 'machines[0].feet[2].pack.now')).toBeFocused()
  await expect(page.locator('[data-figures="feet"] .cell-says')).toHaveText(
    'pack now under the steam turbine foot 2 lake: 2000 µm',
  )
  // the plan takes shims out here; a least pack of what is there now lets none be taken
  await page.keyboard.press('ArrowRight')
  await page.keyboard.type('2,0 mm')
  await expect(page.locator('.last-edit')).toHaveText(
    'changed least pack, the steam turbine foot 2 lake',
  )
  await expect(page.locator('.moves')).not.toHaveText(before ?? '')
  await page.keyboard.press('Escape')
  await expect(page.locator('.moves')).toHaveText(before ?? '')
  await expect(cell(page, 'machines[0].feet[2].pack.min')).toHaveValue('500')
  // a click chooses, what is typed replaces, arrows walk; a second click sets a caret
  const now = cell(page, 'machines[0].feet[2].pack.now')
  await now.click()
  await page.keyboard.type('7')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.type('50')
  await page.keyboard.press('ArrowLeft')
  await expect(now).toHaveValue('7')
  await expect(cell(page, 'machines[0].feet[2].pack.min')).toHaveValue('50')
  await now.click()
  await now.click()
  await page.keyboard.press('Home')
  await page.keyboard.type('1')
  await page.keyboard.press('ArrowRight')
  await page.keyboard.type('2')
  await expect(now).toHaveValue('172')
  await page.keyboard.press('Escape')
  await expect(now).toHaveValue('7')
  expect(seen.faults).toEqual([])
})

test(
  'a hole is moved over its bolt, and a machine along the train, by mouse and by arrow keys',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await open(page, 'feet')
    await page.getByRole('button', { name: 'Hole of the step-up gear foot 2 lake' }).click()
    const y = cell(page, 'machines[2].feet[2].hole.y')
    const x = cell(page, 'machines[2].feet[2].hole.x')
    await expect(y).toHaveValue('50')
    await hole(page).focus()
    await page.keyboard.press('ArrowUp')
    // seen from the right end, 3 o'clock is up the page
    await expect(y).toHaveValue('60')
    await page.keyboard.press('Shift+ArrowLeft')
    await expect(x).toHaveValue('-100')
    await expect(page.locator('.hole-words')).toContainText(/toward the workshop.*toward the lake/)
    const bolt = await page.locator('[data-part="bolt"]').boundingBox()
    if (!bolt) throw new Error('no bolt')
    const boltIn = () =>
      page.locator('[data-part="bolt"]').evaluate((mark) => {
        const [own, picture] = [mark, mark.closest('svg') ?? mark].map((e) =>
          e.getBoundingClientRect(),
        )
        return {
          x: (own?.x ?? NaN) - (picture?.x ?? NaN),
          y: (own?.y ?? NaN) - (picture?.y ?? NaN),
        }
      })
    const stood = await boltIn()
    const [cx, cy] = [bolt.x + bolt.width / 2, bolt.y + bolt.height / 2]
    await page.mouse.move(cx + 20, cy + 20)
    await page.mouse.down()
    await page.mouse.move(cx + 40, cy, { steps: 5 })
    await page.mouse.up()
    // the last move is drawn, and written into the cells, with the next frame
    await expect.poll(async () => Number(await x.inputValue())).toBeGreaterThan(300)
    await expect.poll(async () => Number(await y.inputValue())).toBeGreaterThan(400)
    await expect(page.locator('.last-edit')).toHaveText(
      'moved the hole of the step-up gear foot 2 lake',
    )
    // the bolt has not moved in its picture, to a pixel; the new plan's words may move the page
    const still = await boltIn()
    expect(Math.hypot(still.x - stood.x, still.y - stood.y)).toBeLessThan(1)
    await page.keyboard.press('Control+z')
    await expect(y).toHaveValue('60')
    const rim = page.locator('[data-part="rim"]')
    await rim.focus()
    await page.keyboard.press('Shift+ArrowRight')
    await expect(cell(page, 'machines[2].feet[2].hole.clearance')).toHaveValue('4200')

    // a machine is moved along the train
    const grip = page.getByRole('slider', {
      name: 'move the high-stage compressor along the train',
    })
    const along = cell(page, 'machines[3].feet[0].x')
    await grip.focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Shift+ArrowRight')
    await expect(along).toHaveValue('9111')
    await expect(page.locator('.last-edit')).toHaveText(
      /^moved the high-stage compressor 11 mm right along the train/,
    )
    // however tall a machine is, no grip lies over its drawing; both measured at one moment
    await expect
      .poll(() =>
        grip.evaluate((node) => {
          const drawing = document.querySelector('.elevation')
          if (!drawing) return Infinity
          return node.getBoundingClientRect().bottom - drawing.getBoundingClientRect().top
        }),
      )
      .toBeLessThanOrEqual(0.5)
    // the words of a new plan may move the page under the hand
    await drawn(page)
    const box = await grip.boundingBox()
    if (!box) throw new Error('no grip')
    await page.mouse.move(box.x + 20, box.y + 11)
    await page.mouse.down()
    await page.mouse.move(box.x + 60, box.y + 11, { steps: 4 })
    await page.mouse.up()
    await expect.poll(async () => Number(await along.inputValue())).toBeGreaterThan(9150)
    expect(Number(await along.inputValue()) % 1).toBe(0)
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(along).toHaveValue('9111')
    await page.getByRole('button', { name: /^Undo/ }).click()
    await expect(along).toHaveValue('9100')
    await drawn(page)
    expect(seen.faults).toEqual([])
  },
)

test.describe('by finger', () => {
  test.use({ hasTouch: true, isMobile: true, viewport: { width: 1024, height: 768 } })

  test(
    'a tap chooses a cell, a hole follows, and what is pressed is large enough',
    { tag: '@whole' },
    async ({ page }) => {
      await open(page, 'feet')
      const now = cell(page, 'machines[0].feet[2].pack.now')
      await now.tap()
      await page.keyboard.type('700')
      await expect(now).toHaveValue('700')
      await now.tap()
      await page.keyboard.press('End')
      await page.keyboard.type('1')
      await expect(now).toHaveValue('7001')
      await page.getByRole('button', { name: 'Hole of the step-up gear foot 2 lake' }).tap()
      await page.locator('.hole-picture').scrollIntoViewIfNeeded()
      const bolt = await page.locator('[data-part="bolt"]').boundingBox()
      if (!bolt) throw new Error('no bolt')
      const [cx, cy] = [bolt.x + bolt.width / 2, bolt.y + bolt.height / 2]
      const touch = await page.context().newCDPSession(page)
      const at = (type: string, points: { x: number; y: number }[]) =>
        touch.send('Input.dispatchTouchEvent', {
          type: type as 'touchStart',
          touchPoints: points,
        })
      await at('touchStart', [{ x: cx + 20, y: cy + 20 }])
      for (let i = 1; i <= 5; i++) await at('touchMove', [{ x: cx + 20 - 8 * i, y: cy + 20 }])
      await at('touchEnd', [])
      await expect
        .poll(async () => Number(await cell(page, 'machines[2].feet[2].hole.x').inputValue()))
        .toBeLessThan(-400)
      const small = await page
        .locator('[data-figures="feet"]')
        .locator('button, input[type=text], label.tick, [role=slider] .press')
        .evaluateAll((all) =>
          all.flatMap((one) => {
            const { width, height } = one.getBoundingClientRect()
            const name = one.getAttribute('aria-label') ?? one.textContent
            return width < 47.5 || height < 47.5 ? [`${name} ${width} x ${height}`] : []
          }),
        )
      expect(small).toEqual([])
    },
  )
})

for (const theme of ['light', 'dark'] as const)
  test(`axe finds nothing in the figures, ${theme}`, { tag: '@long' }, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme })
    await open(page, 'job', 'train', 'feet', 'plan')
    await page.getByRole('checkbox', { name: 'Step-up gear may roll' }).check()
    await page.getByRole('button', { name: 'Add a skid under the machines' }).click()
    await page.getByRole('button', { name: 'Hole of the step-up gear foot 2 lake' }).click()
    await page.getByRole('button', { name: 'Enter the shims in stock' }).click()
    await page.getByRole('button', { name: 'Add a thickness' }).click()
    await page
      .getByRole('button', { name: /^More columns/ })
      .first()
      .click()
    await page.getByRole('button', { name: 'Paste a table of feet' }).click()
    await page
      .getByLabel('Paste cells from a spreadsheet', { exact: false })
      .fill('Machine\tFoot\tShims [mm]\tcol\nStep-up gear\t1 lake\t5,2\t4\n\t2\tmany\t4\n')
    await expect(page.locator('.paste-preview')).toBeVisible()
    const { violations } = await new AxeBuilder({ page })
      .include('[data-figures="job"]')
      .include('[data-figures="train"]')
      .include('[data-figures="feet"]')
      .include('[data-figures="plan"]')
      .include('.elevation')
      .analyze()
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`),
    ).toEqual([])
  })

for (const width of [1440, 1024, 390])
  test(
    `the page never scrolls sideways by its figures at ${width} px`,
    { tag: width === 390 ? '@whole' : '@long' },
    async ({ page }) => {
      await page.setViewportSize({ width, height: 800 })
      await open(page, 'job', 'train', 'feet', 'plan')
      const wide = await page.evaluate(() => document.documentElement.scrollWidth)
      expect(wide).toBeLessThanOrEqual(width)
      const figures = await page
        .locator('.figures, .figures .cell-scroll')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right))
      expect(figures.length).toBeGreaterThan(6)
      for (const right of figures) expect(right).toBeLessThanOrEqual(width)
      // what a table does not show is reached by scrolling the table
      await page.getByRole('button', { name: 'Hole of the step-up gear foot 1 lake' }).click()
      await expect(page.locator('.hole-picture')).toBeVisible()
    },
  )
