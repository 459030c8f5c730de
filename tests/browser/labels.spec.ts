import { expect, test } from '@playwright/test'
import { labelDocument, labelTrains, randomLabelTrain } from './labelTrains'
import { drawn, openSheet, openText, sizes } from './sheet'
import { textFaults } from './textBoxes'

/** More random trains when there is time. */
const long = process.env['HOLDFAST_LONG'] === '1'
const more = long ? 40 : 3
const first = Number(process.env['HOLDFAST_SEED'] ?? 1)
const trains = [
  ...labelTrains,
  ...Array.from({ length: more }, (_, i) => randomLabelTrain(first + i)),
]
/** Pictures of what was measured: HOLDFAST_PICTURES=folder. */
const album = process.env['HOLDFAST_PICTURES']

for (const [s, size] of sizes.entries())
  test(`at ${size.width} px no label of generated trains collides, is cut or under 12 px`, async ({
    page,
  }) => {
    test.setTimeout(60_000 * trains.length)
    await page.setViewportSize(size)
    await openSheet(page)
    for (const [i, train] of trains.entries()) {
      // at usual count each train is looked at in one size
      if (!long && i % sizes.length !== s) continue
      await openText(page, 'labels.json', JSON.stringify(labelDocument(train, first + i)))
      await expect(page.locator('.train-name')).toHaveText(train.what)
      await drawn(page)
      const { counted, ...faults } = await textFaults(page)
      if (album)
        await page.screenshot({ path: `${album}/labels-${i}-${size.width}.png`, fullPage: true })
      expect(counted, train.what).toBeGreaterThan(60)
      expect.soft({ train: train.what, ...faults }).toEqual({
        train: train.what,
        overlapping: [],
        small: [],
        clipped: [],
        outside: [],
      })
      const wide = await page.evaluate(() => document.documentElement.scrollWidth)
      expect.soft(wide, train.what).toBeLessThanOrEqual(size.width)
    }
  })
