import { AxeBuilder } from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import {
  chooseExample,
  drawn,
  exampleFiles,
  exampleText,
  openSheet,
  openText,
  resized,
  sizes,
  watch,
  worked,
} from './sheet'
import { longLines } from './longLines'
import { textFaults } from './textBoxes'

/** Where pictures go when they are to be looked at: HOLDFAST_PICTURES=folder. */
const album = process.env['HOLDFAST_PICTURES']

/** Names, sides and states far longer than any of the examples have. */
function longNames(): string {
  const train = JSON.parse(exampleText('five-in-a-line.json')) as {
    name: string
    sides: object
    machines: { name: string }[]
    states: { name: string }[]
  }
  const names = [
    'Hochdruckverdichterstufenantriebsmotor11',
    'Hydrodynamic variable speed planet drive',
    'Speed increasing double helical gear box',
    'Low pressure centrifugal air compressor1',
    'High pressure barrel compressor, 2 stage',
  ]
  train.name = 'A train whose every name is as long as forty letters'
  train.sides = {
    three: 'toward the long turbine hall gangway',
    nine: 'toward the river embankment and its crane',
  }
  train.machines.forEach((machine, i) => (machine.name = names[i] ?? machine.name))
  train.states.forEach((state, i) => (state.name = `a state with a long name, number ${i + 1}`))
  return JSON.stringify(train)
}

/** 1440 x 900 at twice the size, in the page's own pixels; looked at with two examples. */
const zoom = { width: 720, height: 450 }
const zoomed = ['five-in-a-line.json', 'pump-and-motor.json']

/** At usual count an example is looked at in one size after the other, and the longest names in every one. */
function looksAt(file: string) {
  const all = zoomed.includes(file) ? [...sizes, zoom] : sizes
  if (process.env['HOLDFAST_LONG'] === '1' || album || file === 'long-names.json') return all
  const one = all[exampleFiles.indexOf(file) % all.length]
  return one ? [one] : all
}

/** Colours move no letter, so the dark sheet is laid out again only for its pictures. */
const themes = album ? (['light', 'dark'] as const) : (['light'] as const)

test('the search for faults of text finds what is put in its way', async ({ page }) => {
  await page.setContent(
    `<p style="position:absolute;top:240px;left:40px;font-size:16px">over</p>
     <p style="position:absolute;top:248px;left:52px;font-size:16px">lapping</p>
     <p style="font-size:11px">small</p>
     <ul class="heads"><li style="width:20px;white-space:nowrap">wider than its card</li></ul>
     <p style="width:40px;overflow:hidden;white-space:nowrap">cut by what hides it</p>
     <section class="band" style="width:40px;white-space:nowrap">out of its band</section>`,
  )
  expect(await textFaults(page)).toEqual({
    overlapping: ['"over" and "lapping"'],
    small: ['11 px: small'],
    clipped: ['wider than its card', 'cut by what hides it'],
    outside: ['out of its band'],
    counted: 6,
  })
})

test('the search for long lines finds one, and none that is folded', async ({ page }) => {
  const words = 'nine times ten letters '.repeat(5).trim()
  await page.setContent(
    `<p style="width:2000px">${words} <b>and on</b></p><p style="width:300px">${words}</p>`,
  )
  expect(await longLines(page)).toEqual([`${words.length + 7}: ${words} and on`])
})

for (const theme of themes)
  test(
    `at three sizes and at 200 %, ${theme}, no text of any example collides, is cut or under 14 px`,
    { tag: '@whole' },
    async ({ page }) => {
      const seen = watch(page)
      await page.emulateMedia({ colorScheme: theme })
      await openSheet(page)
      for (const file of [...exampleFiles, 'long-names.json']) {
        if (file === 'long-names.json') {
          await openText(page, file, longNames())
          await expect(page.locator('.train-name')).toContainText('forty letters')
          await drawn(page)
        } else await chooseExample(page, file)
        await worked(page)
        for (const size of looksAt(file)) {
          await resized(page, size)
          const at = `${file} at ${size.width} px`
          const faults = await textFaults(page)
          expect(faults.counted, at).toBeGreaterThan(100)
          expect.soft({ at, ...faults, counted: 0 }).toEqual({
            at,
            overlapping: [],
            small: [],
            clipped: [],
            outside: [],
            counted: 0,
          })
          expect.soft(await longLines(page), at).toEqual([])
          // the page itself never scrolls sideways; only the bands may, together
          const wide = await page.evaluate(() => document.documentElement.scrollWidth)
          expect.soft(wide, at).toBeLessThanOrEqual(size.width)
          const bands = await page
            .locator('.page')
            .evaluate((el) => [el.scrollWidth, el.clientWidth])
          if (size.width >= 1024) expect.soft(bands[0], at).toBe(bands[1])
          if (album)
            await page.screenshot({
              path: `${album}/${file.replace('.json', '')}-${size.width}-${theme}.png`,
              fullPage: true,
            })
        }
      }
      expect(seen.faults).toEqual([])
    },
  )

for (const theme of ['light', 'dark'] as const)
  for (const size of [sizes[0], sizes[2]])
    test(`axe finds nothing at ${size.width} px, ${theme}`, { tag: '@long' }, async ({ page }) => {
      await page.setViewportSize(size)
      await page.emulateMedia({ colorScheme: theme })
      // axe reads every colour of every letter, which takes seconds a time
      await openSheet(page)
      const check = async (what: string) => {
        const { violations } = await new AxeBuilder({ page }).analyze()
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' | ')}`),
          what,
        ).toEqual([])
      }
      await chooseExample(page, 'skid-as-one.json')
      await check('a skid')
      if (size.width < 1200) {
        await page.locator('.drawer-pull').click()
        await expect(page.locator('#ledger-body')).toBeVisible()
        await check('the open drawer')
        await page.locator('.drawer-pull').click()
      }
      await openText(page, 'bad.json', '{}')
      await expect(page.getByRole('alert')).toBeVisible()
      await check('a refusal')
    })

test(
  'at 390 px the bands scroll sideways together and their names stay',
  { tag: '@whole' },
  async ({ page }) => {
    await page.setViewportSize(sizes[2])
    await openSheet(page)
    await chooseExample(page, 'five-in-a-line.json')
    const name = page.getByRole('heading', { name: 'Feet', level: 2 })
    const far = page.locator('.foot').last()
    const [nameBefore, footBefore] = [await name.boundingBox(), await far.boundingBox()]
    await page.locator('.page').evaluate((element) => {
      element.scrollLeft = 400
    })
    const [nameAfter, footAfter] = [await name.boundingBox(), await far.boundingBox()]
    expect(nameAfter?.x).toBeCloseTo(nameBefore?.x ?? 0, 0)
    expect((footBefore?.x ?? 0) - (footAfter?.x ?? 0)).toBeCloseTo(400, 0)
    // the choice stays in sight at the bottom edge
    const pull = await page.locator('.drawer-pull').boundingBox()
    expect((pull?.y ?? 0) + (pull?.height ?? 0)).toBeCloseTo(sizes[2].height, 0)
    await expect(page.locator('.drawer-pull')).toContainText('Fixed: the low-stage compressor')
  },
)
