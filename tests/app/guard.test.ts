// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { chooseExample, drawn, layOpen, openSheet, page, savedTrain } from './sheet'
import { isWhole } from '../counts'

const cell = (at: string) => page.locator(`input[data-at="${at}"]`)

test.runIf(isWhole)(
  'a guard and the intervals of growth are asked for among the settings of the plan, and the plan says so',
  async () => {
    await openSheet()
    await chooseExample('bolt-bound-gearbox.json')
    await layOpen('plan')
    await cell('plan.guard').fill('0.2')
    await page.getByRole('checkbox', { name: /every value within the intervals of growth/ }).check()
    await drawn()
    await expect(page.locator('.moves')).toContainText(
      'Kept free of every limit: 0.2 standard uncertainties. It holds for every value within the intervals of growth.',
    )
    expect((await savedTrain()).plan).toMatchObject({ guard: 0.2, worst: true })
  },
)

test.runIf(isWhole)(
  'a point of growth takes low and high in place of its values, and goes back to their middles',
  async () => {
    await openSheet()
    await chooseExample('bolt-bound-gearbox.json')
    await layOpen('states')
    const point = 'machines[0].growth.turndown[0]'
    const turn = (words: string) =>
      page
        .getByRole('button', {
          name: new RegExp(`^${words}, Steam turbine, .*turndown.*point 1$`, 'i'),
        })
        .first()
        .click()
    await turn('Low and high')
    await expect(cell(`${point}.rise`)).toHaveCount(0)
    await expect(cell(`${point}.u`)).toHaveCount(0)
    await expect(cell(`${point}.range.rise[0]`)).toHaveValue('70')
    await cell(`${point}.range.rise[0]`).fill('60')
    await cell(`${point}.range.rise[1]`).fill('110')
    await drawn()
    const first = async () => (await savedTrain()).machines[0]?.growth?.turndown?.[0]
    expect(await first()).toEqual({ at: 0, range: { rise: [60, 110], side: [0, 0] } })
    await turn('One value')
    await drawn()
    expect(await first()).toEqual({ at: 0, rise: 85, side: 0 })
  },
)
