import { readFileSync } from 'node:fs'
import AxeBuilder from '@axe-core/playwright'
import { expect, test, type FileChooser, type Page } from '@playwright/test'
import { savedTrain } from './figuresPage'
import { exampleText, openText, watch } from './sheet'
import {
  isKept,
  jobs,
  keepShare,
  kept,
  notes,
  openPage,
  openShelf,
  ready,
  share,
  versions,
} from './shelfPage'

const firstShare = '70'

/** The example with another share and, if asked, another name. */
function trainText(percent: number, name?: string): string {
  const document = JSON.parse(exampleText('piped-compressor.json')) as {
    name: string
    plan: { share: number }
  }
  document.plan.share = percent / 100
  if (name !== undefined) document.name = name
  return JSON.stringify(document)
}

async function choose(page: Page, example: string): Promise<void> {
  const name = page.locator('.train-name')
  const before = (await name.textContent()) ?? ''
  await page.getByLabel('Example').selectOption(example)
  // what is typed before the other train is there belongs to the one before
  await expect(name).not.toHaveText(before)
  await ready(page)
}

test('what is typed is there after a reload; an example nobody changed is no job', async ({
  page,
}) => {
  const seen = watch(page)
  await openPage(page)
  await expect(share(page)).toHaveValue(firstShare)
  await expect(kept(page)).toHaveText('kept once you change it')
  await openShelf(page)
  await expect(jobs(page)).toHaveCount(0)
  await keepShare(page, 81)
  await expect(jobs(page)).toHaveCount(1)
  await page.reload()
  await ready(page)
  await expect(share(page)).toHaveValue('81')
  await isKept(page)
  // another page of the same browser comes to the same job
  const other = await page.context().newPage()
  await openPage(other)
  await expect(share(other)).toHaveValue('81')
  await expect(page.locator('.also')).toHaveText('also in another tab')
  await other.close()
  expect(seen.faults).toEqual([])
})

test(
  'a change made in the moment of closing is found again',
  { tag: '@whole' },
  async ({ page }) => {
    await openPage(page)
    await keepShare(page, 80)
    // many times in a row in the long run; the usual one also kills a browser (shelfKill.spec.ts)
    const last = process.env['HOLDFAST_LONG'] === '1' ? 85 : 82
    for (let percent = 81; percent <= last; percent++) {
      await share(page).fill(String(percent))
      // nothing waits for the change to be kept
      await page.reload()
      await ready(page)
      await expect(share(page)).toHaveValue(String(percent))
    }
    await openShelf(page)
    await expect(jobs(page)).toHaveCount(1)
  },
)

test(
  'a wrong entry is kept as typed, beside the value that stood there',
  { tag: '@whole' },
  async ({ page }) => {
    const height = page.getByLabel('height of the axis of Motor, mm')
    const enter = page.getByRole('button', { name: 'Enter machines, skids and nozzles' })
    await openPage(page)
    await enter.click()
    await height.fill('71o')
    await expect(height).toHaveAttribute('aria-invalid', 'true')
    await isKept(page)
    await page.reload()
    await ready(page)
    if (!(await height.isVisible())) await enter.click()
    await expect(height).toHaveValue('71o')
    await expect(height).toHaveAttribute('aria-invalid', 'true')
    await openShelf(page)
    await versions(page).last().getByRole('button', { name: /^Look/ }).click()
    await expect(page.locator('.versions .differences tbody tr')).toHaveText([/wrong entries.*71o/])
  },
)

test(
  'the last versions are listed with what changed, looked at, and taken back to',
  { tag: '@whole' },
  async ({ page }) => {
    await openPage(page)
    await keepShare(page, 81)
    await page.locator('.holds .hold').first().click()
    await isKept(page)
    await page.locator('.holds .hold').first().click()
    await isKept(page)
    await openShelf(page)
    await expect(versions(page)).toHaveCount(4)
    await expect(versions(page).nth(0)).toContainText('released')
    await expect(versions(page).nth(1)).toContainText('fixed')
    await expect(versions(page).nth(2)).toContainText('changed the tolerance to use')
    await expect(versions(page).nth(3)).toContainText('opened the example')
    await versions(page).nth(3).getByRole('button', { name: /^Look/ }).click()
    const places = page.locator('.versions .differences tbody tr')
    await expect(places.filter({ hasText: 'share' })).toHaveText(/0\.7.*0\.81/)
    await versions(page)
      .nth(3)
      .getByRole('button', { name: /^Take back/ })
      .click()
    await expect(share(page)).toHaveValue(firstShare)
    await isKept(page)
    await expect(versions(page)).toHaveCount(5)
    await expect(versions(page).nth(0)).toContainText('back to')
    // going back is an edit like any other
    await page.getByRole('button', { name: /^Undo/ }).first().click()
    await expect(share(page)).toHaveValue('81')
  },
)

test(
  'jobs are found by name, site and machine, copied, taken off and put back',
  { tag: '@whole' },
  async ({ page }) => {
    await openPage(page)
    await keepShare(page, 81)
    await choose(page, 'pump-and-motor.json')
    await keepShare(page, 82)
    await openShelf(page)
    await expect(jobs(page)).toHaveCount(2)
    const search = page.getByRole('searchbox', { name: 'Search' })
    await expect(search).toBeFocused()
    await search.fill('blast')
    await expect(jobs(page)).toHaveCount(1)
    await search.fill('pump motor')
    await expect(jobs(page)).toHaveCount(1)
    await search.fill('no such thing')
    await expect(page.locator('.shelf-panel')).toContainText('None has all these words')
    await search.fill('')
    await jobs(page).filter({ hasText: 'Blast air' }).getByRole('button', { name: /^Copy/ }).click()
    await expect(jobs(page)).toHaveCount(3)
    const copy = jobs(page).filter({ hasText: 'Blast air train (copy)' })
    await copy.getByRole('button', { name: /^Open/ }).click()
    await ready(page)
    await expect(share(page)).toHaveValue('81')
    await keepShare(page, 83)
    // the copy goes its own way
    const first = jobs(page).filter({ hasText: 'Blast air' }).filter({ hasNotText: '(copy)' })
    await first.getByRole('button', { name: /^Open/ }).click()
    await expect(share(page)).toHaveValue('81')
    await first.getByRole('button', { name: /^Take off/ }).click()
    await expect(jobs(page)).toHaveCount(2)
    // the one on the sheet made room for the newest of the others
    await expect(share(page)).toHaveValue('83')
    await expect(page.locator('.gone').getByRole('button', { name: 'Undo' })).toBeFocused()
    await page.keyboard.press('Enter')
    await expect(jobs(page)).toHaveCount(3)
    await copy.getByRole('button', { name: /^Take off/ }).click()
    await page.getByText(/^Taken off \(1\)/).click()
    await page.getByRole('button', { name: /^End for good/ }).click()
    await expect(page.getByText(/^Taken off/)).toHaveCount(0)
    await expect(search).toBeFocused()
    await expect(jobs(page)).toHaveCount(2)
    // closed by its key, the focus back where it was opened
    await search.press('Escape')
    await expect(page.locator('.shelf-panel')).toHaveCount(0)
    await expect(page.getByRole('button', { name: 'Shelf', exact: true })).toBeFocused()
  },
)

test(
  'a file whose job is on the shelf: same contents, other contents, an old version',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openPage(page)
    await openText(page, 'air.json', trainText(80))
    await isKept(page)
    await expect(notes(page)).toHaveCount(0)
    await openText(page, 'again.json', trainText(80))
    await expect(notes(page)).toContainText('on the shelf with the same contents')
    await openShelf(page)
    await expect(jobs(page)).toHaveCount(1)
    await keepShare(page, 90)
    await openText(page, 'other.json', trainText(60))
    await expect(notes(page).locator('h2')).toHaveText(
      'Blast air train is on the shelf with other contents; both are kept',
    )
    await expect(notes(page)).toContainText(/On the shelf: changed today \d\d:\d\d/)
    await expect(notes(page)).toContainText(/other\.json: written today \d\d:\d\d/)
    await expect(notes(page).locator('tbody tr')).toHaveText([/plan, share\s*0\.9\s*0\.6/])
    await expect(share(page)).toHaveValue('60')
    await expect(jobs(page)).toHaveCount(2)
    await expect(jobs(page).first()).toContainText('file of')
    await notes(page).getByRole('button', { name: 'Open the one on the shelf' }).click()
    await expect(share(page)).toHaveValue('90')
    // a file that is what the job once was says so, and can be made the newest
    await openText(page, 'old.json', trainText(80))
    await expect(notes(page)).toContainText(/The file is what that job was today/)
    await notes(page).getByRole('button', { name: 'Make the file its newest version' }).click()
    await expect(share(page)).toHaveValue('80')
    await isKept(page)
    await expect(versions(page).first()).toContainText('taken from old.json')
    await expect(versions(page).nth(1)).toContainText('changed the tolerance to use')
    await expect(jobs(page)).toHaveCount(2)
    // a file of another name is another job
    await openText(page, 'gas.json', trainText(80, 'Blast gas train'))
    await expect(page.locator('.train-name')).toHaveText('Blast gas train')
    await expect(notes(page)).toHaveCount(0)
    await expect(jobs(page)).toHaveCount(3)
    expect(seen.faults).toEqual([])
  },
)

test(
  'a file is refused with place and reason, and the job on the sheet stays and is saved as it is',
  { tag: '@whole' },
  async ({ page }) => {
    await openPage(page)
    await keepShare(page, 81)
    const newer = trainText(80).replace('"version":1', '"version":2')
    for (const [name, text, why] of [
      ['newer.json', newer, /version 2 is newer than this program reads/],
      ['cut.json', trainText(80).slice(0, 400), /line 1, column \d+: /],
      ['picture.json', '\u0089PNG\r\n\u001a', /line 1, column 1/],
    ] as const) {
      await openText(page, name, text)
      await expect(page.locator('.refusal h2')).toHaveText(`${name} was not opened`)
      await expect(page.locator('.refusal li').first()).toHaveText(why)
      await page.getByText('Look at the text').click()
      await expect(page.locator('.refusal pre')).toContainText(
        text
          .slice(0, 4)
          .replace(/[^ -~]/g, '')
          .trim(),
      )
      await page.getByRole('button', { name: 'Put it away' }).click()
    }
    await expect(share(page)).toHaveValue('81')
    await openShelf(page)
    await expect(jobs(page)).toHaveCount(1)

    // saved, it is the same train, and opens as the same job
    await page.evaluate(() => {
      Object.assign(window, { showSaveFilePicker: undefined })
    })
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save a file', exact: true }).click(),
    ])
    expect(download.suggestedFilename()).toBe('blast-air-train.json')
    const path = await download.path()
    await page.locator('input[data-opens-files]').setInputFiles(path)
    await expect(notes(page)).toContainText('on the shelf with the same contents')
    await expect(page.locator('.saved')).toHaveText(/^saved as blast-air-train\.json at/)
    const saved = readFileSync(path, 'utf8')
    expect(JSON.parse(saved)).toEqual(JSON.parse(trainText(81)))
  },
)

test(
  'a train under way is saved, opened elsewhere and gone on with; its places are asked for',
  { tag: '@whole' },
  async ({ page, browser, baseURL }) => {
    await openPage(page)
    await page.getByRole('button', { name: 'New train' }).click()
    await page.getByRole('button', { name: 'Add a machine', exact: false }).first().click()
    await page.keyboard.type('Fan')
    await isKept(page)
    const text = JSON.stringify(await savedTrain(page))
    const context = await browser.newContext(baseURL === undefined ? {} : { baseURL })
    const other = await context.newPage()
    await openPage(other)
    await openText(other, 'half.json', text)
    await expect(other.locator('.refusal')).toHaveCount(0)
    await expect(other.locator('.stale-note h2')).toHaveText('Not planned yet')
    await expect(other.locator('.stale-note')).toContainText('Add the next machine to the right')
    await isKept(other)
    expect(await savedTrain(other)).toEqual(JSON.parse(text))
    await context.close()
  },
)

test(
  'files are saved and opened by their usual keys, again in the same place until another is asked for',
  { tag: '@whole' },
  async ({ page }) => {
    // a picker as some browsers have it, with a disk of its own
    await page.addInitScript(() => {
      const disk: { asked: number; files: [name: string, text: string][] } = { asked: 0, files: [] }
      const showSaveFilePicker = ({ suggestedName }: { suggestedName: string }) => {
        const name = `${++disk.asked} ${suggestedName}`
        const createWritable = () => {
          let text = ''
          return Promise.resolve({
            write: (part: string) => Promise.resolve((text += part)),
            close: () => Promise.resolve(disk.files.push([name, text])),
          })
        }
        return Promise.resolve({ name, createWritable })
      }
      Object.assign(window, { disk, showSaveFilePicker })
    })
    // listened for from the beginning: a key may be quicker than the browser is told to hand the question over
    const choosers: FileChooser[] = []
    page.on('filechooser', (chooser) => choosers.push(chooser))
    await openPage(page)
    await keepShare(page, 81)
    const saved = page.locator('.saved')
    // also while one is in a cell
    await share(page).focus()
    await page.keyboard.press('Control+s')
    await expect(saved).toHaveText(/^saved as 1 blast-air-train\.json at/)
    await keepShare(page, 82)
    await page.keyboard.press('Control+s')
    await page.keyboard.press('Control+Shift+s')
    await expect(saved).toHaveText(/^saved as 2 blast-air-train\.json at/)
    const { asked, files } = await page.evaluate<{ asked: number; files: [string, string][] }>(
      'disk',
    )
    expect(asked).toBe(2)
    expect(files.map(([name]) => name)).toEqual([
      '1 blast-air-train.json',
      '1 blast-air-train.json',
      '2 blast-air-train.json',
    ])
    expect(files.map(([, text]) => JSON.parse(text) as unknown)).toEqual(
      [81, 82, 82].map((percent) => JSON.parse(trainText(percent)) as unknown),
    )
    await expect(async () => {
      await page.keyboard.press('Control+o')
      await expect.poll(() => choosers.length, { timeout: 5000 }).toBeGreaterThan(0)
    }).toPass()
    const [chooser] = choosers
    if (!chooser) throw new Error('no file is asked for')
    const buffer = Buffer.from(trainText(60, 'Another train'))
    await chooser.setFiles({ name: 'other.json', mimeType: 'application/json', buffer })
    await expect(page.locator('.train-name')).toHaveText('Another train')
    await expect(share(page)).toHaveValue('60')
  },
)

// in the usual run states.spec.ts looks at shelf and note with all rules by day and at colours by night
test(
  'the shelf and its notes are sound for screen readers and by day and night',
  { tag: '@long' },
  async ({ page }) => {
    await openPage(page)
    await openText(page, 'air.json', trainText(80))
    await openText(page, 'other.json', trainText(60))
    await openShelf(page)
    await versions(page).first().getByRole('button', { name: /^Look/ }).click()
    for (const night of [false, true]) {
      if (night) await page.getByRole('button', { name: 'Night colours' }).click()
      const found = await new AxeBuilder({ page })
        .include('.shelf-panel')
        .include('.shelf-note')
        .include('.shelf-tools')
        .analyze()
      expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([])
    }
  },
)
