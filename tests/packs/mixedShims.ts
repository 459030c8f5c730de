import { column, fixed, sum, valueOf, type Affine } from '../second/affine'
import { footRows, shimAt } from '../second/limits'
import { build, type Built } from '../second/model'
import { ownCarry, type Mover } from '../second/motion'
import { addColumn, type Circle } from '../second/program'
import { loadSolver } from '../second/solver'
import { fineFactor, type Foot } from '../second/train'
import { standsOf, type Stand } from './fixedShims'
import type { Shimmed } from './shimmed'
import { storeChanges } from './store'

/** What the mixed-integer program came to. */
export type Mixed =
  /** Changes (um) by stand, in the order of `standsOf`; what they cost, and what nothing is cheaper than. */
  | { kind: 'found'; changes: number[]; cost: number; lowest: number }
  | { kind: 'nothing' }
  /** It ran out of nodes; nothing costs less than `lowest`. */
  | { kind: 'unfinished'; lowest: number }

/** How a question is put. */
export interface Asked {
  share: number
  /** No change costs more than this by itself (um): what is already known to be had. */
  most: number
  /** Moves under this (um) are not made at all. */
  least: number
}

const mostRounds = 30
const mostNodes = 2_000

/**
 * Real shims as one mixed-integer program for HiGHS: a binary for every change that the store makes of
 * a stand, on the rows of the second builder. Nothing of it comes from the engine.
 */
export class MixedShims {
  private readonly built: Built
  readonly stands: Stand[]
  private readonly whole = new Set<number>()
  /** Columns and changes of the binaries of each stand. */
  private readonly picks: { stand: Stand; columns: number[]; values: number[] }[] = []

  constructor(
    private readonly document: Shimmed,
    private readonly asked: Asked,
  ) {
    this.built = build(document)
    this.stands = standsOf(this.built)
    const { program, movers } = this.built
    for (const mover of movers.values()) {
      const free = mover.own.tz.by.size > 0
      if (free) this.payByChange(mover)
      const of = new Map<Foot, Affine>()
      for (const stand of this.stands)
        if (stand.body === mover.body.id) {
          const height = this.pick(mover, stand)
          for (const foot of stand.feet) of.set(foot, height)
        }
      if (free) this.layOn(mover, of)
      for (const foot of footRows(mover.body.feet))
        this.notSmall(ownCarry(mover, { x: foot.x, y: foot.y ?? 0, z: 0 }).y)
      this.notSmall(mover.own.tx)
    }
    program.upper[program.worst] = asked.share
  }

  /** The planes of a body cost nothing; what goes in or out does. */
  private payByChange(mover: Mover): void {
    const { program } = this.built
    const same = (a: Affine, b: Affine) =>
      a.by.size === b.by.size && [...a.by].every(([key, value]) => b.by.get(key) === value)
    for (const foot of mover.body.feet) {
      const shim = shimAt(mover, foot)
      for (const { of, up, down } of program.sizes)
        if (same(of, shim)) {
          program.cost[up] = 0
          program.cost[down] = 0
        }
    }
  }

  /** One of the changes that all feet of a stand can make. */
  private pick({ body }: Mover, stand: Stand): Affine {
    const { program, train } = this.built
    const changes = storeChanges(this.document)
    const price = (train.plan?.weights?.shim ?? 1) * (body.weight ?? 1) * stand.feet.length
    const lists = stand.feet.map((foot) => changes(foot))
    const values = (lists[0] ?? []).filter(
      (v) =>
        lists.every((list) => list.some((w) => Math.abs(w - v) < 1e-3)) &&
        Math.abs(v) * price <= this.asked.most &&
        (v === 0 || Math.abs(v) >= this.asked.least - 1e-6),
    )
    const columns = values.map((v) => addColumn(program, 0, 1, price * Math.abs(v)))
    for (const c of columns) this.whole.add(c)
    this.picks.push({ stand, columns, values })
    const one = sum(...columns.map((c): [number, Affine] => [1, column(c)]))
    program.rows.push({ family: 'cost', also: [], expression: one, low: 1, high: 1 })
    return sum(...columns.map((c, i): [number, Affine] => [values[i] ?? 0, column(c)]))
  }

  /**
   * The body lies in the plane of its changes: on two rows exactly, on more by least squares, each foot
   * within `flat` of it. The least-squares plane through feet that keep their height is where the rest
   * is square to every way the plane can turn, but for what those feet take up.
   */
  private layOn(mover: Mover, of: ReadonlyMap<Foot, Affine>): void {
    const { program } = this.built
    const { body, own, x0 } = mover
    const equal = (expression: Affine, by: number) =>
      program.rows.push({ family: 'cost', also: [], expression, low: -by, high: by })
    const off = body.feet.map((foot) =>
      sum([1, of.get(foot) ?? fixed(0)], [-1, shimAt(mover, foot)]),
    )
    if (footRows(body.feet).length <= 2) {
      for (const part of off) equal(part, 0)
      return
    }
    const fine = fineFactor(this.document)
    const { flat } = this.document.plan.shims
    for (const part of off) equal(part, flat === undefined ? 25 : flat * fine)
    const turns = [
      () => 1,
      ...(own.sz.by.size > 0 ? [(foot: Foot) => (foot.x - x0) / 1000] : []),
      ...(own.roll.by.size > 0 ? [(foot: Foot) => (foot.y ?? 0) / 1000] : []),
    ]
    const kept = body.feet.filter((foot) => foot.free?.shim === false)
    const taken = kept.map(() => addColumn(program, -Infinity, Infinity))
    for (const turn of turns)
      equal(
        sum(
          ...body.feet.map((foot, f): [number, Affine] => [turn(foot), off[f] ?? fixed(0)]),
          ...kept.map((foot, k): [number, Affine] => [turn(foot), column(taken[k] ?? 0)]),
        ),
        0,
      )
  }

  /** A slide or a move along the train is 0 or at least `least`, either way. */
  private notSmall(moved: Affine): void {
    const { program } = this.built
    const { least, most } = this.asked
    if (least <= 0 || moved.by.size === 0) return
    const far = Math.max(most, 1000)
    const [up, down] = [addColumn(program, 0, 1), addColumn(program, 0, 1)]
    this.whole.add(up).add(down)
    const rows: [Affine, number, number][] = [
      [sum([1, column(up)], [1, column(down)]), 0, 1],
      [sum([1, moved], [-least, column(up)], [far, column(down)]), 0, Infinity],
      [sum([1, moved], [-far, column(up)], [least, column(down)]), -Infinity, 0],
    ]
    for (const [expression, low, high] of rows)
      program.rows.push({ family: 'cost', also: [], expression, low, high })
  }

  /** The cheapest changes; circles are cut where a point lies past them. */
  async solve(): Promise<Mixed> {
    const highs = await loadSolver()
    const { program } = this.built
    const rows = program.rows.map(({ expression, low, high }) => ({ expression, low, high }))
    for (const circle of program.circles)
      for (let k = 0; k < 16; k++) rows.push(tangent(circle, (2 * Math.PI * k) / 16))
    const numCols = program.cost.length
    const { variableType, modelStatus } = highs.constants
    let lowest = 0
    for (let round = 0; round < mostRounds; round++) {
      const starts = [0]
      const indices: number[] = []
      const values: number[] = []
      for (const { expression } of rows) {
        for (const [index, value] of expression.by) {
          if (Math.abs(value) < 1e-13) continue
          indices.push(index)
          values.push(value)
        }
        starts.push(indices.length)
      }
      const model = highs.createModel({
        numCols,
        numRows: rows.length,
        colCost: program.cost,
        colLower: program.lower,
        colUpper: program.upper,
        rowLower: rows.map((r) => r.low - r.expression.constant),
        rowUpper: rows.map((r) => r.high - r.expression.constant),
        matrix: { format: 'csr', numRows: rows.length, numCols, starts, indices, values },
        integrality: program.cost.map((_, c) =>
          this.whole.has(c) ? variableType.integer : variableType.continuous,
        ),
      })
      try {
        model.options.set({
          output_flag: false,
          mip_rel_gap: 1e-7,
          mip_abs_gap: 1e-4,
          mip_feasibility_tolerance: 1e-9,
          primal_feasibility_tolerance: 1e-9,
          mip_max_nodes: mostNodes,
        })
        model.run()
        const status = model.getModelStatus()
        if (status === modelStatus.infeasible) return { kind: 'nothing' }
        lowest = Math.max(lowest, Number(model.info.get('mip_dual_bound')))
        if (status !== modelStatus.optimal) return { kind: 'unfinished', lowest }
        const { colValue } = model.getSolution()
        const cost = program.cost.reduce((all, price, c) => all + price * (colValue[c] ?? 0), 0)
        const cuts = program.circles.flatMap((circle) => {
          const [a, b] = [valueOf(circle.a, colValue), valueOf(circle.b, colValue)]
          const past = Math.hypot(a, b) - valueOf(circle.radius, colValue)
          return past > 10 * circle.slack ? [tangent(circle, Math.atan2(b, a))] : []
        })
        if (cuts.length === 0)
          return { kind: 'found', changes: this.chosen(colValue), cost, lowest }
        rows.push(...cuts)
      } finally {
        model.dispose()
      }
    }
    return { kind: 'unfinished', lowest }
  }

  private chosen(values: ArrayLike<number>): number[] {
    return this.picks.map(({ columns, values: changes }) => {
      const at = columns.map((c) => values[c] ?? 0)
      return changes[at.indexOf(Math.max(...at))] ?? 0
    })
  }
}

function tangent({ a, b, radius }: Circle, angle: number) {
  const expression = sum([1, radius], [-Math.cos(angle), a], [-Math.sin(angle), b])
  return { expression, low: 0, high: Infinity }
}
