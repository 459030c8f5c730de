import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'

/** The pages that people read, by their place in the project. */
export const pages: ReadonlyMap<string, string> = new Map(
  [
    ...['README.md', 'DEVELOPERS.md', 'shared/README.md', 'examples/README.md'],
    ...readdirSync('shared/docs').map((name) => `shared/docs/${name}`),
  ].map((path) => [path, readFileSync(path, 'utf8')]),
)

/** The text of one page; throws where there is none. */
export function page(path: string): string {
  const text = pages.get(path)
  if (text === undefined) throw new Error(`no page ${path}`)
  return text
}

/** Files of the project under its own folders and beside them, by their place. */
export const files: readonly string[] = [
  ...readdirSync('.', { withFileTypes: true }).flatMap((entry) =>
    entry.isFile() ? [entry.name] : [],
  ),
  ...['src', 'tests', 'shared', 'examples'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true }).flatMap((entry) =>
      entry.isFile() ? [`${entry.parentPath}/${entry.name}`] : [],
    ),
  ),
]

/** Names of the folders of a folder that hold any file; none where it is not there. */
export const folders = (parent: string): string[] =>
  existsSync(parent)
    ? readdirSync(parent, { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && readdirSync(`${parent}/${entry.name}`).length > 0)
        .map(({ name }) => name)
    : []

/** The heading's name in a link, as pages are shown on the web. */
const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-')

/** Links of a page that lead to no file, or to no heading of the file. */
export function brokenLinks(path: string): string[] {
  return [...page(path).matchAll(/\]\((?!https?:)([^)#]*)(?:#([^)]+))?\)/g)].flatMap(
    ([, file = '', heading]) => {
      const target = file === '' ? path : normalize(join(dirname(path), file))
      const headings = () =>
        [...readFileSync(target, 'utf8').matchAll(/^#+ (.+)$/gm)].map(([, text = '']) =>
          anchorOf(text),
        )
      const found = existsSync(target) && (heading === undefined || headings().includes(heading))
      return found ? [] : [`${path}: ${file}${heading === undefined ? '' : `#${heading}`}`]
    },
  )
}

/** Places under src, tests, shared and examples that a text names, and files that it names as code. */
export function placesIn(text: string): string[] {
  const whole = text.match(/(?<![\w./-])(?:src|tests|shared|examples)\/[\w./-]*/g) ?? []
  const code = [...text.matchAll(/`([\w./-]+\.(?:ts|vue|mjs|json))`/g)].map(([, name = '']) => name)
  return [...new Set([...whole, ...code])].map((place) => place.replace(/[./]+$/, ''))
}

/** Whether a place is there: whole, or as the end of a file's place. */
export const isThere = (place: string): boolean =>
  existsSync(place) || files.some((file) => file.endsWith(`/${place}`))

/** What stands between the markers of a made part, such as `<!-- counts -->`; undefined without them. */
export const madePart = (text: string, name: string): string | undefined =>
  new RegExp(`<!-- ${name} -->\\n([\\s\\S]*?)<!-- /${name} -->`).exec(text)?.[1]

/** Cells of the rows of the tables in a text, heads left out. */
export const rowsOf = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line, i, lines) => line.startsWith('| ') && !lines[i + 1]?.startsWith('|---'))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    )
