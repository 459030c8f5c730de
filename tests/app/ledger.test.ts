// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { chooseExample, openSheet, page } from './sheet'
import { answering } from './workers'

test('what binds is told with its price', async () => {
  await openSheet()
  await chooseExample('base-bound-motor.json')
  const limits = page.locator('.bindings li')
  await expect(limits.first()).toHaveText(/^(each|the next) \S+ mrad more tolerance .* saves/)
  await expect(limits.filter({ hasText: 'less pack allowed under foot' }).first()).toHaveText(
    /^each \S+ µm less pack allowed under foot .* saves \S+ µm of moves, up to \S+ µm$/,
  )
})

test('a foot says why it moves this much', async () => {
  answering('why')
  await openSheet()
  await chooseExample('bolt-bound-gearbox.json')
  const ask = page.getByRole('button', { name: 'why this much at the step-up gear foot 1 lake?' })
  await ask.click()
  await expect(page.locator('.why-foot')).toContainText('What holds it there')
  await expect(page.locator('.why-foot')).toContainText('Step-up gear foot 1 lake')
  await expect(ask).toHaveAttribute('aria-expanded', 'true')
  await ask.press('Enter')
  await expect(page.locator('.why-foot')).toHaveCount(0)
  await ask.press('Enter')
  await expect(page.locator('.why-foot')).toContainText('What holds it there')
  // an answer about another plan is not left standing
  await page.getByLabel('Tolerance to use at most in percent').fill('80')
  await expect(page.locator('.why-foot')).toHaveCount(0)
})
