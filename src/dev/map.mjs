// npm run map: the rooms of the house with their levels, and what should not be: rings, imports
// upward, exported names that stand twice. Fails where there is a ring or an import upward.
// With --write the counts go into DEVELOPERS.md, between its two "map" marks.
import { readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { importsOf } from './imports.mjs'
import { roomOf, rooms, upward } from './layers.mjs'
import { levels, rings } from './rings.mjs'

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))))
const files = importsOf(root)
const folders = folderGraph(files, dirname)
const house = folderGraph(files, (file) => roomOf(file) ?? dirname(file))
const wrong = [
  ...rings(files).map((ring) => `ring of files: ${ring.join(', ')}`),
  ...rings(folders).map((ring) => `ring of folders: ${ring.join(', ')}`),
  ...[...files].flatMap(([from, targets]) =>
    targets.flatMap((to) => {
      const why = upward(from, to)
      return why === undefined ? [] : [`${from} imports ${to}: ${why}`]
    }),
  ),
]
const level = levels(house)
const lines = new Map([...files.keys()].map((file) => [file, linesOf(file)]))
const sizes = [...lines.values()].sort((a, b) => a - b)
const twice = namesThatStandTwice([...files.keys()])
const counts = [
  `${files.size} files in ${folders.size} folders, median ${sizes[sizes.length >> 1]} lines, most ${sizes.at(-1)}`,
  `${sizes.filter((size) => size <= 40).length} files of 40 lines or fewer`,
  `${new Set(level.values()).size} levels of rooms, ${rings(files).length} rings of files, ${rings(folders).length} rings of folders`,
  `${twice.length} exported names that stand twice`,
]

for (const [room, about] of rooms)
  console.log(`${String(level.get(room) ?? 0).padStart(3)}  ${room.padEnd(24)} ${about}`)
console.log(`\n${counts.join('\n')}`)
if (process.argv.includes('--names')) console.log(twice.join('\n'))
if (wrong.length > 0) console.log(`\n${wrong.join('\n')}`)
if (process.argv.includes('--write')) write()
process.exitCode = wrong.length === 0 ? 0 : 1

/** Folders with the folders that their files import from. */
function folderGraph(graph, folderOf) {
  const found = new Map()
  for (const [file, targets] of graph) {
    const from = folderOf(file)
    if (!found.has(from)) found.set(from, new Set())
    for (const to of targets) if (folderOf(to) !== from) found.get(from).add(folderOf(to))
  }
  return found
}

function linesOf(file) {
  return readFileSync(join(root, file), 'utf8').split('\n').length - 1
}

/** Functions, classes and constants of one name that two files export; types may share a name with care. */
function namesThatStandTwice(paths) {
  const places = new Map()
  for (const file of paths)
    for (const [, name] of readFileSync(join(root, file), 'utf8').matchAll(
      /^export (?:async )?(?:abstract )?(?:function\*?|const|let|class|interface|type|enum) (\w+)/gm,
    ))
      places.set(name, [...(places.get(name) ?? []), file])
  return [...places]
    .filter(([, at]) => new Set(at).size > 1)
    .map(([name, at]) => `${name}: ${[...new Set(at)].join(', ')}`)
    .sort()
}

function write() {
  const file = join(root, 'DEVELOPERS.md')
  const text = readFileSync(file, 'utf8')
  const made = `<!-- map -->\n${counts.map((line) => `- ${line}`).join('\n')}\n<!-- /map -->`
  writeFileSync(file, text.replace(/<!-- map -->[\s\S]*<!-- \/map -->/, made))
}
