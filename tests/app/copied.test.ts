// @vitest-environment happy-dom
import { execFileSync } from 'node:child_process'
import { expect, test, vi } from 'vitest'
import { openSheet, page } from './sheet'
import { answering } from './workers'
import { isWhole } from '../counts'

test.runIf(isWhole)('the plan is copied as the command line prints it', async () => {
  answering('work')
  const copied: string[] = []
  vi.stubGlobal('navigator', {
    ...{ userAgent: navigator.userAgent, language: 'en' },
    clipboard: { writeText: (text: string) => Promise.resolve(copied.push(text)) },
  })
  await openSheet()
  await expect(page.locator('.step-list')).toHaveCount(1)
  // what a limit costs follows when the plan has stood a while
  await expect(page.locator('.ledger')).toContainText(/saves/)
  await page.getByRole('button', { name: 'Copy the plan as text' }).click()
  await expect(page.locator('.copy-plan')).toContainText('copied')
  const printed = execFileSync(
    'node',
    ['src/cli/holdfast.mjs', 'plan', 'examples/piped-compressor.json'],
    { encoding: 'utf8' },
  )
  expect(copied[0]?.trimEnd()).toBe(printed.trimEnd())
})
