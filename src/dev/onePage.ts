import type { Plugin } from 'vite'

/** Puts the script, the styles and the icon of a built page into the page itself, under one name. */
export function onePage(name: string): Plugin {
  return {
    name: 'holdfast-one-page',
    apply: 'build',
    enforce: 'post',
    // nothing is loaded apart, so nothing is loaded ahead
    renderChunk: (code) => ({ code: code.replaceAll('__VITE_PRELOAD__', 'void 0'), map: null }),
    generateBundle(_, bundle) {
      const page = bundle['index.html']
      if (page?.type !== 'asset') return // the script of a worker
      let html = String(page.source)
      for (const [file, made] of Object.entries(bundle)) {
        if (made === page) continue
        Reflect.deleteProperty(bundle, file)
        if (made.type === 'chunk' && made.isEntry) {
          const script = made.code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--')
          html = html
            .replace(new RegExp(`\\s*<script[^>]*${escaped(file)}[^>]*></script>`), '')
            .replace('</body>', () => `<script type="module">${script}</script>\n  </body>`)
        } else if (made.type === 'asset' && file.endsWith('.css'))
          html = html.replace(
            new RegExp(`<link[^>]*${escaped(file)}[^>]*>`),
            () => `<style>${String(made.source)}</style>`,
          )
        else if (made.type === 'asset' && file.endsWith('.svg'))
          html = html.replace(`./${file}`, `data:image/svg+xml;base64,${base64(made.source)}`)
        else throw new Error(`${file} is no part of the one page`)
      }
      Reflect.deleteProperty(bundle, 'index.html')
      this.emitFile({ type: 'asset', fileName: name, source: html })
    },
  }
}

const base64 = (source: string | Uint8Array): string => Buffer.from(source).toString('base64')

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
