import { AxeBuilder } from '@axe-core/playwright'
import { expect, test, type Page } from '@playwright/test'
import { focused, layOpen, savedTrain, tabTo } from './figuresPage'
import { chooseExample, drawn, openSheet, sizes, watch } from './sheet'
import { textFaults } from './textBoxes'

/** Where pictures go when they are to be looked at: HOLDFAST_PICTURES=folder. */
const album = process.env['HOLDFAST_PICTURES']
const sentence = (page: Page) => page.locator('.sentence h1')

async function open(page: Page, file: string): Promise<void> {
  await openSheet(page)
  await chooseExample(page, file)
}

test(
  'a reverse rim pair is entered by the keyboard alone and the plan follows',
  { tag: '@whole' },
  async ({ page }) => {
    const { faults } = watch(page)
    await open(page, 'pump-and-motor.json')
    const asFile = await sentence(page).textContent()
    await page.evaluate(() => {
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
    })
    const key = (name: string) => page.keyboard.press(name)

    await tabTo(page, 'Enter readings')
    await key('Enter')
    await tabTo(page, 'Remove set 2 of motor to pump')
    await key('Enter')
    await tabTo(page, 'Remove set 1 of motor to pump')
    await key('Enter')
    await expect(page.locator('.stale-note')).toContainText('What was read at the coupling')
    await expect(page.locator('.stale-note h2')).toHaveText(
      'The plan below is of the numbers before',
    )
    await expect(sentence(page)).toHaveText(asFile ?? '')

    await tabTo(page, 'Add reverse rim pair at motor to pump')
    await key('Enter')
    expect(await focused(page)).toBe("top, 12 o'clock, set 1 of motor to pump, mil")
    for (const [i, value] of ['0', '-8', '-37', '-29'].entries()) {
      if (i > 0) await key('ArrowRight')
      await page.keyboard.type(value)
    }
    await expect(page.locator('.reading-set').first().locator('.cell-says').first()).toHaveText(
      'stem let out 29 mil toward the road',
    )
    await tabTo(page, 'place along the train, set 1 of motor to pump, in')
    await page.keyboard.type('49 1/2')
    await tabTo(
      page,
      'what a stiff bar reads at the bottom, bracket of set 1 of motor to pump, mil',
    )
    await page.keyboard.type('-4')

    await tabTo(page, "top, 12 o'clock, set 2 of motor to pump, mil")
    for (const [i, value] of ['0', '4.5', '31', '27'].entries()) {
      if (i > 0) await key('ArrowRight')
      await page.keyboard.type(value)
    }
    await tabTo(page, 'place along the train, set 2 of motor to pump, in')
    await page.keyboard.type('41,5')
    await tabTo(page, /^half of the drop, as the plan counts it/)
    await key('Enter')
    await tabTo(page, 'half of the drop, bracket of set 2 of motor to pump, mil')
    await page.keyboard.type('2')

    await expect(page.locator('.stale-note')).toHaveCount(0)
    await drawn(page)
    await expect(sentence(page)).toHaveText(asFile ?? '')
    await expect(page.locator('.reading-result')).toContainText('the circulating pump is')
    const { found } = (await savedTrain(page)).couplings[0] ?? { found: [] }
    expect(found).toEqual([
      {
        kind: 'rim',
        rides: 'right',
        at: 49.5,
        readings: [
          [12, 0],
          [3, -8],
          [6, -37],
          [9, -29],
        ],
        sag: 2,
      },
      {
        kind: 'rim',
        rides: 'left',
        at: 41.5,
        readings: [
          [12, 0],
          [3, 4.5],
          [6, 31],
          [9, 27],
        ],
        sag: 2,
      },
    ])
    // the plan follows a key: another reading, another line in words
    const before = await page.locator('.reading-result').textContent()
    await page.getByLabel("bottom, 6 o'clock, set 1 of motor to pump, mil").fill('-39')
    await expect(page.locator('.reading-result')).not.toHaveText(before ?? '')
    await drawn(page)
    expect(faults).toEqual([])
  },
)

const everyTheme = process.env['HOLDFAST_LONG'] === '1'
for (const [i, size] of sizes.entries())
  for (const theme of everyTheme ? (['light', 'dark'] as const) : [themeOf(i)])
    test(
      `at ${size.width} px, ${theme}, open figures have no faults that axe finds and scroll in themselves`,
      { tag: '@long' },
      async ({ page }) => {
        await page.setViewportSize(size)
        await page.emulateMedia({ colorScheme: theme })
        await open(page, 'skid-as-one.json')
        for (const band of ['couplings', 'readings', 'states']) {
          await layOpen(page, band)
          const figures = page.locator(`[data-figures="${band}"]`)
          for (const more of await figures.locator('details').all())
            await more.evaluate((element) => {
              element.setAttribute('open', '')
            })
          const picker = figures.getByRole('button', { name: 'Take a published tolerance' }).last()
          if (band === 'couplings') await picker.click()
          const { violations } = await new AxeBuilder({ page })
            .include(`[data-figures="${band}"]`)
            .analyze()
          expect(
            violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`),
            band,
          ).toEqual([])
          const texts = await textFaults(page)
          expect({ band, overlapping: texts.overlapping, small: texts.small }).toEqual({
            band,
            overlapping: [],
            small: [],
          })
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(size.width)
          const box = await figures.boundingBox()
          expect(box?.width ?? Infinity, band).toBeLessThanOrEqual(size.width)
          if (album)
            await figures.screenshot({ path: `${album}/${band}-${size.width}-${theme}.png` })
          await page.locator(`.figures-button[data-enters="${band}"]`).click()
        }
      },
    )

/** At usual count each size is looked at in one theme. */
function themeOf(size: number): 'light' | 'dark' {
  return size === 1 ? 'dark' : 'light'
}
