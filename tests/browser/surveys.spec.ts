import { readFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'
import { openSheet, openText } from './sheet'

/** Motor, gear and pump of shared/refused, sound, with heights that agree with what was read there. */
const text = readFileSync('shared/refused/sound.json', 'utf8')

test(
  'a survey is typed, told as contradicting or agreeing, and joins the lines at a tick',
  { tag: '@whole' },
  async ({ page }) => {
    await openSheet(page)
    await openText(page, 'small.json', text)
    await page.getByRole('button', { name: 'Enter surveys' }).click()
    await page.getByRole('button', { name: 'Add a survey' }).click()
    const figures = page.locator('[data-figures="surveys"]')
    const height = (p: number) => figures.locator(`[data-at="surveys[0].points[${p}].z"]`)
    // places at the first and the last foot of all three machines
    for (const [p, z] of [0, 0, 65, -55, -410, -610].entries()) await height(p).fill(String(z))
    await expect(figures.getByText('counts for nothing until')).toBeVisible()
    await figures.getByRole('checkbox', { name: /^use survey 1/ }).check()
    const verdict = figures.getByRole('status')
    await expect(verdict).toContainText('the readings of the couplings')
    await height(3).fill('900')
    await expect(verdict).toContainText('contradicts the readings of the couplings')
    await expect(verdict).toContainText('Gear at x 2400 mm')
    await expect(verdict).toContainText('The plan stands on the readings alone.')
    await figures.getByRole('checkbox', { name: /^plan on the lines/ }).check()
    await expect(verdict).toContainText('fitted to it all the same')
    await figures.getByRole('button', { name: 'Remove survey 1' }).click()
    await expect(verdict).toHaveCount(0)
    await expect(figures.getByRole('button', { name: 'Add a survey' })).toBeVisible()
  },
)
