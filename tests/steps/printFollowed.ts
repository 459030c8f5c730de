import {
  bodiesOf,
  slopeScale,
  standingOf,
  worstPassed,
  type BodyFile,
  type Move,
  type TrainFile,
} from './contract'

/** One step as it stands on the crew's print. */
export interface Printed {
  readonly words: string
  readonly breaks: readonly string[]
  readonly lifts: readonly string[]
}

/** What following the print comes to (fine units). */
export interface PrintFollowed {
  /** Most that a limit is passed by at a pose of a step that tells of none, and where. */
  readonly by: number
  readonly what: string
  /** Most that a foot lacks of the room to slip its change where the print says that it has room. */
  readonly lacks: number
  /** Most that an end is further ahead of the other than the step's first sentence says. */
  readonly ahead: number
  /** Feet whose packs a step changes and for which no pose says that there is room. */
  readonly noRoom: string[]
  /** How far each foot was told to go in all: [aside, up], by "body foot". */
  readonly told: ReadonlyMap<string, [number, number]>
  /** Most that the ends, let down, lie from what the feet of their rows were told. */
  readonly down: number
}

const still: Move = { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }
const numberOf = (text: string): number => Number(text.replace('−', '-').replace('+', ''))

/** Feet named by "feet 1-far, 2 near and 3" or "foot 1". */
const namesOf = (text: string): string[] => text.split(/, | and /).map((name) => name.trim())

/** Follows the print of steps, by its words and the train file alone: no answer of the planner is looked at. */
export function followPrint(
  file: TrainFile,
  steps: readonly Printed[],
  toThree: string,
): PrintFollowed {
  const um = { um: 1, mm: 1000, mil: 25.4 }[file.units.fine]
  const slip = file.plan?.slip ?? 1000 / um
  const standing = new Map<string, Move>()
  const told = new Map<string, [number, number]>()
  const noRoom: string[] = []
  let worst = { by: 0, what: '' }
  let [lacks, ahead, down] = [0, 0, 0]
  for (const { words, breaks, lifts } of steps) {
    const [, kind, rest = ''] = /^(?:Soft foot first\. )?(Shim|Slide) the (.*)$/s.exec(words) ?? []
    if (kind === undefined) continue
    const body = bodiesOf(file).find(({ name }) =>
      rest.toLowerCase().startsWith(`${name.toLowerCase()}:`),
    )
    if (!body) throw new Error(`no body in "${words}"`)
    const before = standingOf(standing, body.id)
    const moves = new Map<string, number>()
    const way = kind === 'Shim' ? shimsTold(rest, moves) : slidesTold(rest, moves, toThree)
    // a soft foot gets what it lacks; the plan is on top of that
    const soft = words.startsWith('Soft foot')
    for (const [foot, value] of soft ? [] : moves) {
      const sum = told.get(`${body.id} ${foot}`) ?? [0, 0]
      sum[way] += value
      told.set(`${body.id} ${foot}`, sum)
    }
    const look = (move: Move, there: boolean) => {
      standing.set(body.id, move)
      const passed = worstPassed(file, standing, there ? [] : ['maximum pack'])
      if (passed.by > worst.by && breaks.length === 0)
        worst = { by: passed.by, what: `${words}: ${passed.what}` }
    }
    if (kind === 'Slide') {
      look(
        sum(before, atEnds(file, body, [rowOf(body, moves, 0), rowOf(body, moves, -1)], 'side')),
        true,
      )
      continue
    }
    const most = Number(/none more than ([\d.]+)/.exec(words)?.[1] ?? Infinity)
    const ends: [number, number] = [0, 0]
    const waiting = new Set([...moves].flatMap(([foot, value]) => (value === 0 ? [] : [foot])))
    for (const [i, line] of lifts.entries()) {
      for (const [, end = '', to = ''] of line.matchAll(
        /(left|right|both) ends? (?:up |down )?to ([+−]?[\d.]+)/gi,
      )) {
        if (!/right/i.test(end)) ends[0] = numberOf(to)
        if (!/left/i.test(end)) ends[1] = numberOf(to)
      }
      ahead = Math.max(ahead, Math.abs(ends[0] - ends[1]) - most)
      for (const foot of namesOf(/packs? of f(?:ee|oo)t ([^.]*)/.exec(line)?.[1] ?? '')) {
        if (!waiting.delete(foot)) continue
        const need = Math.max(0, moves.get(foot) ?? 0) + slip
        lacks = Math.max(lacks, need - heightAt(body, foot, ends))
      }
      look(sum(before, atEnds(file, body, ends, 'rise')), i === lifts.length - 1)
    }
    noRoom.push(...[...waiting].map((foot) => `${words}: ${foot}`))
    if (!soft)
      for (const [end, k] of [
        [0, 0],
        [1, -1],
      ] as const)
        down = Math.max(down, Math.abs(ends[end] - rowOf(body, moves, k)))
  }
  return { ...worst, lacks, ahead, noRoom, told, down }
}

function shimsTold(rest: string, moves: Map<string, number>): 1 {
  for (const [, act, value = '', feet = ''] of rest.matchAll(
    /(put in|take out) ([\d.]+) \S+ under f(?:ee|oo)t ([^;.]*)/g,
  ))
    for (const foot of namesOf(feet)) moves.set(foot, (act === 'put in' ? 1 : -1) * Number(value))
  return 1
}

function slidesTold(rest: string, moves: Map<string, number>, toThree: string): 0 {
  for (const [, feet = '', value = '', toward = ''] of rest.matchAll(
    /f(?:ee|oo)t ([^;.]*?) ([\d.]+) (?:µm|mm|mil) ([^;.]*)/g,
  ))
    for (const foot of namesOf(feet))
      moves.set(foot, (toward.trim() === toThree ? 1 : -1) * Number(value))
  return 0
}

const xs = ({ feet }: BodyFile): [number, number] => [
  Math.min(...feet.map(({ x }) => x)),
  Math.max(...feet.map(({ x }) => x)),
]

/** What the row at the left end (0) or the right one (-1) was told; nought where it was told nothing. */
function rowOf(body: BodyFile, moves: ReadonlyMap<string, number>, end: 0 | -1): number {
  const x = xs(body).at(end)
  const row = body.feet.filter((foot) => foot.x === x).map(({ id }) => moves.get(id) ?? 0)
  return row.reduce((all, one) => all + one, 0) / row.length
}

function heightAt(body: BodyFile, id: string, [left, right]: readonly [number, number]): number {
  const [low, high] = xs(body)
  const x = body.feet.find((foot) => foot.id === id)?.x ?? NaN
  return left + (high > low ? ((x - low) / (high - low)) * (right - left) : 0)
}

function atEnds(
  file: TrainFile,
  body: BodyFile,
  [left, right]: readonly [number, number],
  way: 'side' | 'rise',
): Move {
  const [low, high] = xs(body)
  const slope = high > low ? (right - left) / (high - low) : 0
  const middle = body.feet.reduce((all, { x }) => all + x, 0) / body.feet.length
  const [shift, turn] = [left + slope * (middle - low), slope / slopeScale(file)]
  return way === 'rise' ? { ...still, tz: shift, sz: turn } : { ...still, ty: shift, sy: turn }
}

const sum = (a: Move, b: Move): Move => ({
  tx: a.tx + b.tx,
  ty: a.ty + b.ty,
  tz: a.tz + b.tz,
  sy: a.sy + b.sy,
  sz: a.sz + b.sz,
  roll: a.roll + b.roll,
})
