let kept: Promise<string> | undefined

/** The sheet's font as a rule that a picture carries inside, so that it looks alike anywhere. */
export const fontFace = (): Promise<string> => (kept ??= embedded())

async function embedded(): Promise<string> {
  const rules = [...document.styleSheets].flatMap((sheet) =>
    [...sheet.cssRules].filter((rule) => rule instanceof CSSFontFaceRule),
  )
  const used = [...document.fonts].filter(({ status }) => status === 'loaded')
  const ranges = new Set(used.map(({ unicodeRange }) => unicodeRange))
  const wanted = rules.filter(({ style }) => ranges.has(style.getPropertyValue('unicode-range')))
  const faces = await Promise.all(
    wanted.map(async ({ style, parentStyleSheet }) => {
      const source = /url\("?([^")]+)"?\)/.exec(style.getPropertyValue('src'))?.[1]
      if (source === undefined) return ''
      const address = new URL(source, parentStyleSheet?.href ?? document.baseURI)
      const data = await asData(await (await fetch(address)).blob())
      return `@font-face{font-family:${style.getPropertyValue('font-family')};font-weight:200 900;unicode-range:${style.getPropertyValue('unicode-range')};src:url(${data}) format("woff2")}`
    }),
  )
  return faces.join('\n')
}

function asData(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader()
    reader.onload = () => {
      resolve(reader.result as string)
    }
    reader.onerror = () => {
      reject(new Error('the font could not be read'))
    }
    reader.readAsDataURL(blob)
  })
}
