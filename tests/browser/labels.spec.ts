import { expect, test } from '@playwright/test'
import { labelDocument, labelTrains, randomLabelTrain } from './labelTrains'
import { drawn, openSheet, openText, resized, sizes } from './sheet'
import { textFaults } from './textBoxes'

/** More random trains when there is time. */
const long = process.env['HOLDFAST_LONG'] === '1'
const more = long ? 40 : 1
const first = Number(process.env['HOLDFAST_SEED'] ?? 1)
const trains = [
  ...labelTrains,
  ...Array.from({ length: more }, (_, i) => randomLabelTrain(first + i)),
]
/** Pictures of what was measured: HOLDFAST_PICTURES=folder. */
const album = process.env['HOLDFAST_PICTURES']

test(
  'no label of generated trains collides, is cut or under 14 px',
  { tag: '@whole' },
  async ({ page }) => {
    test.setTimeout(600_000 + 60_000 * trains.length)
    await openSheet(page)
    for (const [i, train] of trains.entries()) {
      await openText(page, 'labels.json', JSON.stringify(labelDocument(train, first + i)))
      await expect(page.locator('.train-name')).toHaveText(train.what)
      await drawn(page)
      for (const [s, size] of sizes.entries()) {
        // at usual count each train is looked at in one size
        if (!long && i % sizes.length !== s) continue
        await resized(page, size)
        const at = `${train.what}, at ${size.width} px`
        const { counted, ...faults } = await textFaults(page)
        if (album)
          await page.screenshot({ path: `${album}/labels-${i}-${size.width}.png`, fullPage: true })
        expect(counted, at).toBeGreaterThan(60)
        expect
          .soft({ at, ...faults })
          .toEqual({ at, overlapping: [], small: [], clipped: [], outside: [] })
        const wide = await page.evaluate(() => document.documentElement.scrollWidth)
        expect.soft(wide, at).toBeLessThanOrEqual(size.width)
      }
    }
  },
)
