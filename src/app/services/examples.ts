import { Later } from './later'

/** The example trains that ship with the app, each its own chunk, fetched when it is opened. */
const files = import.meta.glob<string>('../../../examples/*.json', {
  query: '?raw',
  import: 'default',
})

export interface Example {
  readonly file: string
  /** The file's name as words: "piped-compressor.json" is "Piped compressor". */
  readonly title: string
  readonly text: Later<string>
}

export const examples: readonly Example[] = Object.entries(files).map(([place, text]) => {
  const file = place.split('/').at(-1) ?? place
  const words = file.replace(/\.json$/, '').replaceAll('-', ' ')
  return { file, title: words.charAt(0).toUpperCase() + words.slice(1), text: new Later(text) }
})

/** What a newcomer sees first: the ordinary job. */
export const firstExample = 'piped-compressor.json'
