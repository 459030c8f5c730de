/**
 * The rooms of the house, from the ground up: a file may import from its own room and from rooms
 * that stand above it in this list, which is to say below it in the house. The lint rule
 * `holdfast/downward` keeps it, and `npm run map` counts what stands.
 */
export const layers = [
  ['src/mechanics', 'units, the train as the engine has it, motion, growth'],
  ['src/mechanics/readings', 'dials and gauges to one line a coupling'],
  ['src/mechanics/misalignment', 'couplings against their tolerances, in every state'],
  ['src/language', 'names of sides, couplings, feet, hours; amounts with units; recipes'],
  ['src/document', 'the train file: shape, meaning, conversion, refusals'],
  ['src/document/typed', 'numbers as people write them'],
  ['src/document/words', 'places and parts of a document in words'],
  ['src/document/edits', 'changes of a document'],
  ['src/document/tables', 'tables typed, pasted and looked up'],
  ['src/engine/proof', 'judges a plan by code of its own'],
  ['src/engine/lp', 'the linear program, its circles, the solver port'],
  ['src/engine/lp/rows', 'one physical fact a file'],
  ['src/engine/plan', 'asks the questions in order'],
  ['src/engine/rounding', 'feet rounded together to the shims of the store'],
  ['src/engine/infeasible/elastic', 'limits that can be made to give'],
  ['src/engine/infeasible/floor', 'why the floor is where it is'],
  ['src/engine/infeasible/conflict', 'smallest sets that cannot all be had'],
  ['src/engine/infeasible/remedies', 'what could be changed'],
  ['src/engine/studies/holds', 'choices of held bodies'],
  ['src/engine/studies/tradeoff', 'least cost against share of tolerance'],
  ['src/engine/studies/hand', 'machines put by hand'],
  ['src/engine/studies/why', 'why a foot moves as far as it does'],
  ['src/engine/work/ready', 'whether a plan may be carried out'],
  ['src/engine/work/steps', 'the order of work'],
  ['src/engine/work/loop', 'reading again, standing now, pages of the record'],
  ['src/engine', 'the planning run: the whole story of a plan'],
  ['src/solvers', 'GLPK behind the port'],
  ['src/scene', 'what the sheet draws, as data'],
  ['src/text', 'plain text for the terminal and for copying'],
  ['src/paper', 'the work sheet: pages as data, and their HTML'],
  ['src/worker', 'the planner in a module worker'],
  ['src/cli', 'arguments, files, exit status'],
  ['src/app', 'the sheet'],
]

/** The room of a file: the longest folder of the list that it lies in; undefined outside all. */
export function roomOf(file) {
  let found
  for (const [folder] of layers)
    if (file.startsWith(`${folder}/`) && folder.length > (found?.length ?? 0)) found = folder
  return found
}

/** Why one file may not import another; undefined where it may. */
export function upward(from, to) {
  const [a, b] = [roomOf(from), roomOf(to)]
  if (a === undefined || b === undefined || a === b) return undefined
  const place = (room) => layers.findIndex(([folder]) => folder === room)
  if (place(b) < place(a)) return undefined
  return `${a} may not import ${b}: it stands above it (see src/dev/layers.mjs)`
}
