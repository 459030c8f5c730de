// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { isWhole } from '../counts'
import { press } from './keys'
import { answering } from './workers'
import { chooseExample, drawn, layOpen, openSheet, page, savedTrain } from './sheet'

const card = () => page.locator('[data-hot="june"]')

test.runIf(isWhole)(
  'a hot check says how the train ran; one press takes the growth it found, and the plan is the trim',
  async () => {
    answering('work')
    await openSheet()
    await chooseExample('hot-check.json')
    // not behind a press: whoever reads that nothing needs to move reads this too
    const head = page.locator('.sentence')
    await expect(head).toContainText('Nothing needs to move.')
    await expect(head).toContainText(
      'Hot check “June, full load”: in “full load” turbine to compressor ran at 161 % of its tolerance, and the growth in use expects 17 %',
    )
    await layOpen('states')
    await expect(card()).toContainText('In “full load” turbine to compressor ran at 161 %')
    await expect(card()).toContainText('a trim is worth it now, before it runs again.')
    await expect(card()).toContainText('carried back to the stop')
    const before = (await savedTrain()).machines[0]?.growth?.['full-load'] ?? []
    await card()
      .getByRole('button', { name: /^Use the growth that was found/ })
      .first()
      .click()
    await drawn()
    const after = (await savedTrain()).machines[0]?.growth?.['full-load'] ?? []
    expect(after.slice(0, 2)).toMatchObject([
      { at: 100, source: 'measured', when: '11 June', by: 'R. Hale' },
      { at: 1400, source: 'measured', when: '11 June', by: 'R. Hale' },
    ])
    expect(after.slice(2)).toEqual(before.map((point) => ({ ...point, use: false })))
    await expect(card()).toContainText('the plan of this sheet is the trim')
    await expect(page.locator('.page')).toContainText('Steam turbine')
    await expect(head).not.toContainText('growth in use expects')
  },
)

test.runIf(isWhole)(
  'a hot check is added, typed and taken back where the states stand, and leaves the plan alone until it counts',
  async () => {
    const figures = page.locator('[data-figures="states"]')
    const cell = (at: string) => page.locator(`[data-at="hotChecks[1].${at}"]`)
    const added = (name: RegExp) => figures.getByRole('button', { name }).first().click()
    await openSheet()
    await chooseExample('hot-check.json')
    await layOpen('states')
    await added(/^Add a hot check/)
    await expect(figures).toContainText('It counts for nothing until “used” is ticked')
    await added(/^turbine to compressor, read after the stop, hot check 2/)
    await cell('couplings[0].times[0].after').fill('30')
    const readings = [0, 150, 360, 210]
    for (const [i, value] of readings.entries())
      for (const set of [0, 1])
        await cell(`couplings[0].times[0].found[${set}].readings[${i}][1]`).fill(String(value))
    await added(/^Add a time/)
    await cell('couplings[0].times[1].after').fill('60')
    await added(/^Remove this time, turbine to compressor, 60 min/)
    await added(/^Steam turbine, measured as moved, hot check 2/)
    await cell('moved[0].points[0].rise').fill('120')
    await cell('moved[0].points[1].rise').fill('140')
    await drawn()
    const saved = (await savedTrain()).hotChecks?.[1]
    expect(saved).toMatchObject({
      use: false,
      couplings: [{ coupling: 'turbine-compressor', times: [{ after: 30 }] }],
      moved: [{ points: [{ rise: 120 }, { rise: 140 }] }],
    })
    expect(
      saved?.couplings?.[0]?.times[0]?.found.map((set) => 'readings' in set && set.readings),
    ).toEqual([0, 1].map(() => [12, 3, 6, 9].map((hour, i) => [hour, readings[i]])))
    await expect(page.locator('[data-hot="hot-check-2"]')).toHaveCount(0)
    await cell('use').click()
    await drawn()
    await expect(page.locator('[data-hot="hot-check-2"]')).toContainText('Hot check “hot check 2”')
    for (let i = 0; i < 20 && (await savedTrain()).hotChecks?.length !== 1; i++)
      await press('Control+z')
    expect((await savedTrain()).hotChecks).toHaveLength(1)
  },
)
