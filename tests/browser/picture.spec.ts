import { readFileSync } from 'node:fs'
import { expect, test, type Page } from '@playwright/test'
import { openSheet, watch } from './sheet'

/** Pixels of a saved picture to one of the screen. */
const density = 2

async function saved(page: Page, band: string, kind: 'SVG' | 'PNG'): Promise<Buffer> {
  const tools = page.locator(`.band-${band} > .band-name .picture-tools`)
  if ((await tools.getAttribute('open')) === null) await tools.locator('summary').click()
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    tools.getByRole('button', { name: new RegExp(`^${kind}`) }).click(),
  ])
  expect(file.suggestedFilename()).toMatch(
    new RegExp(`^blast-air-train-.*\\.${kind.toLowerCase()}$`),
  )
  return readFileSync(await file.path())
}

/** Words of a band as they are seen: what is drawn, without what belongs to the screen alone. */
const wordsOf = (page: Page, band: string): Promise<string[]> =>
  page.locator(`.band-${band}`).evaluate((element) => {
    const away =
      '.figures, .picture-tools, .why-button, .press, .unseen, .stakes-press, button, input, style, title, desc'
    const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT)
    const words = new Set<string>()
    while (walker.nextNode()) {
      const { parentElement: parent, textContent: text } = walker.currentNode
      if (!parent || parent.closest(away)) continue
      const range = document.createRange()
      range.selectNodeContents(walker.currentNode)
      if (range.getBoundingClientRect().width === 0) continue
      for (const word of (text ?? '').split(/\s+/)) if (word !== '') words.add(word)
    }
    return [...words]
  })

test(
  'every band is saved as a drawing with its texts and as a picture of its size',
  { tag: '@whole' },
  async ({ page }) => {
    const seen = watch(page)
    await openSheet(page)
    await expect(page.locator('.step-list')).toBeVisible()
    const bands = await page
      .locator('.band')
      .evaluateAll((all) =>
        all.flatMap((band) =>
          [...band.classList]
            .filter((name) => name.startsWith('band-'))
            .map((name) => name.slice(5)),
        ),
      )
    expect(bands).toEqual(
      expect.arrayContaining([
        'train',
        'rise',
        'side',
        'feet',
        'couplings',
        'ready',
        'order',
        'record',
      ]),
    )
    for (const band of bands) {
      const svg = (await saved(page, band, 'SVG')).toString('utf8')
      const words = await wordsOf(page, band)
      // the font's rule needs no escaping; the page's content rules would complain of it here
      const [whole, rule] = /<style>([^<&]*)<\/style>/.exec(svg) ?? []
      expect(rule).toContain('@font-face')
      const drawing = await page.evaluate(
        (text) => {
          const { documentElement: root } = new DOMParser().parseFromString(text, 'image/svg+xml')
          return {
            fault: root.querySelector('parsererror')?.textContent,
            kind: root.localName,
            size: [Number(root.getAttribute('width')), Number(root.getAttribute('height'))],
            words: [...root.querySelectorAll('text')].map((one) => one.textContent).join(' '),
            scripts: root.querySelectorAll('script, foreignObject').length,
            marks: root.querySelectorAll('path, rect, circle, line').length,
          }
        },
        svg.replace(whole ?? '', ''),
      )
      expect(drawing).toMatchObject({ fault: undefined, kind: 'svg', scripts: 0 })
      expect(drawing.marks).toBeGreaterThan(0)
      const told = new Set(drawing.words.split(/\s+/))
      expect({ band, missing: words.filter((word) => !told.has(word)) }).toEqual({
        band,
        missing: [],
      })

      const png = (await saved(page, band, 'PNG')).toString('base64')
      const picture = await page.evaluate(async (data) => {
        const image = new Image()
        image.src = `data:image/png;base64,${data}`
        await image.decode()
        const canvas = document.createElement('canvas')
        ;[canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight]
        const pen = canvas.getContext('2d')
        pen?.drawImage(image, 0, 0)
        const pixels = new Uint32Array(
          pen?.getImageData(0, 0, canvas.width, canvas.height).data.buffer ?? new ArrayBuffer(0),
        )
        return { size: [canvas.width, canvas.height], colours: new Set(pixels).size }
      }, png)
      const [wide = 0, high = 0] = drawing.size
      expect(picture.size[0]).toBe(wide * density)
      // the line that says what was saved may have made the band a little higher meanwhile
      expect(Math.abs((picture.size[1] ?? 0) / density - high)).toBeLessThanOrEqual(24)
      // paper, ink and what lies between them at the edges of letters
      expect(picture.colours).toBeGreaterThan(10)
    }
    expect(seen.faults).toEqual([])
  },
)
