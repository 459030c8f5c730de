/**
 * The rooms of the house from the ground up, each with its inner folders in the same order ("." is
 * the room itself). A file may import from its own folder and from what stands earlier in this list;
 * the lint rule `holdfast/downward` keeps it, and `npm run map` counts what stands.
 */
export const rooms = [
  [
    'src/mechanics',
    'units, the train as the engine has it, the arithmetic of the trade',
    ['.', 'readings', 'surveys', 'misalignment', 'uncertainty', 'hotCheck'],
  ],
  ['src/language', 'names of sides, couplings, feet, hours; amounts with units; recipes'],
  [
    'src/document',
    'the train file: shape, meaning, conversion, refusals, edits, tables',
    ['.', 'typed', 'edits', 'words', 'tables'],
  ],
  ['src/engine/proof', 'judges a plan by code of its own'],
  ['src/engine/lp', 'the linear program, its circles, the solver port', ['.', 'rows']],
  ['src/engine/plan', 'asks the questions in order'],
  [
    'src/engine/chance',
    'how sure a plan is: errors drawn, every state judged, what would buy most',
  ],
  ['src/engine/rounding', 'feet rounded together to the shims of the store'],
  [
    'src/engine/infeasible',
    'why nothing works, and what would help',
    ['elastic', 'floor', 'conflict', 'remedies'],
  ],
  [
    'src/engine/studies',
    'choices to hold, trade-off, hand plans, why a foot moves',
    ['holds', 'tradeoff', 'hand', 'why'],
  ],
  [
    'src/engine/fieldwork',
    'ready or not, order of work, reading again, record, the train as it ran',
    ['hotCheck', 'ready', 'steps', '.', 'loop', 'since', 'site'],
  ],
  ['src/engine', 'the planning run: the whole story of a plan'],
  ['src/json', 'answers in the units of the document, for programs and the record'],
  ['src/solvers', 'GLPK behind the port'],
  ['src/library', 'what programs import: the run and its solver'],
  ['src/scene', 'what the sheet draws, as data', ['drawings', '.']],
  ['src/text', 'plain text for the terminal and for copying'],
  ['src/paper', 'the work sheet: pages as data, and their HTML'],
  ['src/worker', 'the planner in a module worker'],
  ['src/cli', 'arguments, files, exit status'],
  [
    'src/app',
    'the sheet',
    [
      'services',
      'shelf',
      'stores',
      'picture',
      'parts',
      'cells',
      'paper',
      'bands',
      'figures',
      'ledger',
      'jobs',
      'head',
      'machine',
      '.',
    ],
  ],
]

/** Every folder of the table, from the ground up. */
const folders = rooms.flatMap(([room, , inner = ['.']]) =>
  inner.map((name) => (name === '.' ? room : `${room}/${name}`)),
)

/** The longest of some folders that a file lies in; undefined outside all. */
const longest = (file, names) =>
  names.reduce(
    (best, name) =>
      file.startsWith(`${name}/`) && name.length > (best?.length ?? 0) ? name : best,
    undefined,
  )

export const folderOf = (file) => longest(file, folders)
export const roomOf = (file) =>
  longest(
    file,
    rooms.map(([room]) => room),
  )

/** Why one file may not import another; undefined where it may. */
export function upward(from, to) {
  const [a, b] = [folderOf(from), folderOf(to)]
  if (a === undefined || b === undefined || folders.indexOf(b) <= folders.indexOf(a))
    return undefined
  return `${a} may not import ${b}: it stands above it (see src/dev/layers.mjs)`
}

/** The folders of `src` that the rooms lie in. */
export const topFolders = [...new Set(rooms.map(([room]) => room.split('/').slice(0, 2).join('/')))]
