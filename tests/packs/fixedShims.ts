import { sum, valueOf, type Affine } from '../second/affine'
import { footRows } from '../second/limits'
import { build, type Built } from '../second/model'
import { ownCarry, type Mover } from '../second/motion'
import { loadSolver, Stages } from '../second/solver'
import { fineFactor, type Foot } from '../second/train'
import type { Shimmed } from './shimmed'

/** Feet whose shims change alike: a row, or one foot by itself where the body may roll. */
export interface Stand {
  body: string
  feet: Foot[]
}

/** What a set of shims comes to when the slides are planned for it (um). */
export interface Evaluated {
  cost: number
  worstShare: number
}

const freeTo = (part: Affine) => part.by.size > 0

/** The stands of every body that its own motion can raise, from the second builder's bodies. */
export function standsOf(built: Built): Stand[] {
  return [...built.movers.values()].flatMap(({ body, own }) => {
    if (!freeTo(own.tz)) return []
    if (freeTo(own.roll)) return body.feet.map((foot) => ({ body: body.id, feet: [foot] }))
    return footRows(body.feet).map((row) => ({
      body: body.id,
      feet: body.feet.filter((foot) => Math.abs(foot.x - row.x) <= 1e-6),
    }))
  })
}

/** Solves small systems by elimination with pivots. */
function solved(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0])
  const n = rows.length
  for (let k = 0; k < n; k++) {
    const at = (i: number) => Math.abs(rows[i]?.[k] ?? 0)
    const order = Array.from({ length: n - k }, (_, i) => i + k).sort((a, b) => at(b) - at(a))
    const [best = k] = order
    const pivotRow = rows[best]
    const other = rows[k]
    if (!pivotRow || !other) continue
    rows[best] = other
    rows[k] = pivotRow
    const pivot = pivotRow[k] ?? 0
    if (Math.abs(pivot) < 1e-12) continue
    rows.forEach((row, i) => {
      if (i === k) return
      const factor = (row[k] ?? 0) / pivot
      for (let j = k; j <= n; j++) row[j] = (row[j] ?? 0) - factor * (pivotRow[j] ?? 0)
    })
  }
  return rows.map((row, k) => (Math.abs(row[k] ?? 0) < 1e-12 ? 0 : (row[n] ?? 0) / (row[k] ?? 1)))
}

/** How much heavier a foot that keeps its height counts than the others in the plane through the shims. */
const heavy = 1e9

/**
 * Rise, pitch and roll (columns tz, sz, roll of the body) of the least-squares plane through shim changes, through the
 * feet that keep their height, and how far the worst foot stands off it (um).
 */
function planeOf(
  mover: Mover,
  changes: ReadonlyMap<Foot, number>,
): { tz: number; sz: number; roll: number; off: number } {
  const { body, own, x0 } = mover
  const pitches = freeTo(own.sz)
  const rolls = freeTo(own.roll)
  const terms = body.feet.map((f) => [
    1,
    pitches ? (f.x - x0) / 1000 : 0,
    rolls ? (f.y ?? 0) / 1000 : 0,
  ])
  const weight = body.feet.map((f) => (f.free?.shim === false ? heavy : 1))
  const dot = (a: number, b: number) =>
    terms.reduce((s, t, i) => s + (weight[i] ?? 1) * (t[a] ?? 0) * (t[b] ?? 0), 0)
  const right = (a: number) =>
    terms.reduce((s, t, i) => {
      const foot = body.feet[i]
      return s + (weight[i] ?? 1) * (t[a] ?? 0) * ((foot && changes.get(foot)) ?? 0)
    }, 0)
  const [tz = 0, sz = 0, roll = 0] = solved(
    [0, 1, 2].map((a) => [0, 1, 2].map((b) => dot(a, b))),
    [0, 1, 2].map(right),
  )
  const off = body.feet.map((f, i) => {
    const [, arm = 0, side = 0] = terms[i] ?? []
    return Math.abs((changes.get(f) ?? 0) - (tz + sz * arm + roll * side))
  })
  return { tz, sz: sz / 1000, roll: roll / 1000, off: Math.max(0, ...off) }
}

/** Plans the slides of a train around shims that are fixed, with the second builder and HiGHS. */
export class FixedShims {
  readonly built: Built
  readonly stands: Stand[]
  private readonly flat: number

  constructor(private readonly document: Shimmed) {
    this.built = build(document)
    this.stands = standsOf(this.built)
    const fine = fineFactor(document)
    this.flat = document.plan.shims.flat === undefined ? 25 : document.plan.shims.flat * fine
  }

  /**
   * Least cost of the slides and the shims together within a share; undefined where no slides keep it.
   * Foot objects are those of `built.train`.
   */
  async cost(changes: ReadonlyMap<Foot, number>, share: number): Promise<Evaluated | undefined> {
    const { program, movers, checks, train } = this.built
    const rows: { part: Affine; value: number }[] = []
    let shims = 0
    let counted = 0
    const { shim: shimWeight = 1 } = train.plan?.weights ?? {}
    for (const mover of movers.values()) {
      const { own, body } = mover
      if (!freeTo(own.tz)) continue
      const plane = planeOf(mover, changes)
      const loose = footRows(body.feet).length > 2
      if (plane.off > (loose ? this.flat + 1e-3 : 1e-3)) return undefined
      for (const name of ['tz', 'sz', 'roll'] as const)
        if (freeTo(own[name])) rows.push({ part: own[name], value: plane[name] })
      const price = shimWeight * (body.weight ?? 1)
      for (const foot of body.feet) {
        const { pack, lift } = foot
        const change = changes.get(foot) ?? 0
        if (pack && change < Math.min(0, (pack.min ?? 0) - pack.now) - 1e-3) return undefined
        if (pack && change > Math.max(0, (pack.max ?? Infinity) - pack.now) + 1e-3) return undefined
        if (lift !== undefined && change > Math.max(0, lift) + 1e-3) return undefined
        shims += price * Math.abs(change)
        const y = foot.y ?? 0
        const plain = plane.tz + plane.sz * (foot.x - mover.x0) + plane.roll * y
        counted += price * Math.abs(plain)
      }
    }
    const stages = new Stages(await loadSolver(), program)
    try {
      for (const { part, value } of rows)
        stages.addRow({
          family: 'cost',
          also: [],
          expression: part,
          low: value - 1e-7,
          high: value + 1e-7,
        })
      stages.limitWorst(share)
      const cost: Affine = { constant: 0, by: new Map() }
      program.cost.forEach((price, index) => {
        if (price !== 0) cost.by.set(index, price)
      })
      const least = stages.least(cost)
      if (!least) return undefined
      const size = (part: Affine) => Math.abs(valueOf(part, least.columns))
      const worstShare = Math.max(
        0,
        ...checks.map(({ y, z, round }) =>
          round && z ? Math.hypot(size(y), size(z)) : Math.max(size(y), z ? size(z) : 0),
        ),
      )
      return { cost: least.objective - counted + shims, worstShare }
    } finally {
      stages.dispose()
    }
  }

  /** What the train's own plan raises a stand by (um), from the answer's own motion of its body. */
  shimOf(stand: Stand, move: { tz: number; sz: number; roll: number }): number {
    const mover = this.built.movers.get(stand.body)
    const [foot] = stand.feet
    if (!mover || !foot) return 0
    const at = ownCarry(mover, { x: foot.x, y: foot.y ?? 0, z: 0 }).z
    const { own } = mover
    const fine = fineFactor(this.document)
    const value = (part: Affine, amount: number) => {
      const [entry] = part.by
      return entry ? { index: entry[0], value: amount / entry[1] } : undefined
    }
    const columns: number[] = []
    for (const [part, amount] of [
      [own.tz, move.tz * fine],
      [own.sz, move.sz],
      [own.roll, move.roll],
    ] as const) {
      const set = value(part, amount)
      if (set) columns[set.index] = set.value
    }
    return valueOf(sum([1, at]), columns)
  }
}
