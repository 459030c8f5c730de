// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { isWhole } from '../counts'
import { chooseExample, drawn, layOpen, openSheet, page, savedTrain } from './sheet'

const card = () => page.locator('[data-hot="june"]')

test.runIf(isWhole)(
  'a hot check says how the train ran; one press takes the growth it found, and the plan is the trim',
  async () => {
    await openSheet()
    await chooseExample('hot-check.json')
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
  },
)
