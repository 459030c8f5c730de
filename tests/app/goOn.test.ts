// @vitest-environment happy-dom
import { getActivePinia } from 'pinia'
import { expect, test } from 'vitest'
import { useAllowance } from '../../src/app/stores/allowance'
import { useJob } from '../../src/app/stores/job'
import { openSheet, page } from './sheet'
import { answering } from './workers'
import { isWhole } from '../counts'

test.runIf(isWhole)(
  'a plan that ran out of work says so and goes on at a press, with twice the work',
  async () => {
    answering('analysis', 'work')
    await openSheet()
    const headline = page.locator('.sentence h1')
    await expect(headline).toHaveText(/^Leave /)
    const allowance = useAllowance(getActivePinia())
    const job = useJob(getActivePinia())
    await expect(page.getByRole('button', { name: 'Go on, with twice the work' })).toHaveCount(0)

    // as if the train were far larger: what is allowed is not enough for it
    allowance.times = 5e-7
    await job.goOn()
    await expect(headline).toHaveText('The planner stopped without an answer: no plan is shown.')
    await expect(page.locator('.sentence')).toContainText('says nothing of whether there is one')
    await expect(page.locator('.choices')).toContainText('one that is not told may be better')
    const margin = page.locator('.margin')
    await expect(margin).toContainText('What margin costs was not worked out')
    await expect(margin).not.toContainText('working out the curve')
    expect(allowance.times).toBe(1e-6)
    const more = page
      .locator('.sentence')
      .getByRole('button', { name: 'Go on, with twice the work' })
    await more.click()
    expect(allowance.times).toBe(2e-6)
    await expect(headline).toHaveText('The planner stopped without an answer: no plan is shown.')

    allowance.times = 0.5
    await more.click()
    await expect(headline).toHaveText(/^Leave /)
    await expect(more).toHaveCount(0)
    await expect(page.locator('.choices')).toContainText(/all \d+ choices solved/)
    await expect(page.locator('.choices')).not.toContainText('may be better')
    await expect(page.locator('.sure-line')).toHaveText(/^About \d+ %/)
  },
)
