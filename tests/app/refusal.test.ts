// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { drawn, exampleText, openSheet, openText, page } from './sheet'

test('a file is refused with place and reason, and the job on the sheet stays', async () => {
  await openSheet()
  const share = page.getByLabel('Share in percent')
  await share.fill('81')
  await drawn()
  const text = JSON.stringify(JSON.parse(exampleText('piped-compressor.json')))
  for (const [name, torn, why] of [
    [
      'newer.json',
      text.replace('"version":1', '"version":2'),
      /version 2 is newer than this program reads/,
    ],
    ['cut.json', text.slice(0, 400), /line 1, column \d+: /],
    ['picture.json', '\u0089PNG\r\n\u001a', /line 1, column 1/],
  ] as const) {
    await openText(name, torn)
    await expect(page.locator('.refusal h2')).toHaveText(`${name} was not opened`)
    await expect(page.locator('.refusal li').first()).toHaveText(why)
    await page.getByText('Look at the text').click()
    await expect(page.locator('.refusal pre')).toContainText(torn.slice(0, 4).trim())
    await page.getByRole('button', { name: 'Put it away' }).click()
    await expect(page.locator('.refusal')).toHaveCount(0)
  }
  await expect(share).toHaveValue('81')
  await expect(page.locator('.train-name')).toHaveText('Blast air train')
})
