import type { Micrometres } from '../../mechanics/units'
import type { Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import type { Affine } from '../lp/affine'
import { frameOf } from '../lp/frame'
import { reach, type Program } from '../lp/program'
import { common, hasUnder, notUnder, type Allowed } from './allowed'
import { Plates } from './plates'
import { withLooseShims } from './shimVariables'
import { footAllowed } from './shims'
import { footGroupsOf } from './footGroups'

/** A move that is told to people, and so must be one that they can make. */
export interface DisplayedMove {
  readonly kind: 'shim' | 'slide' | 'axial'
  readonly body: number
  /** Feet that it moves alike; none for a move along the train. */
  readonly feet: readonly number[]
  /** Row among the limits of the program that bounds it. */
  readonly row: number
  /** What it may be when moves under `plan.leave` are left alone, and when they are not; one object where that is the same. */
  readonly tidy: Allowed
  readonly any: Allowed
}

/** A program whose limits end with one row for each choice. */
export interface Choosing {
  readonly program: Program
  readonly choices: readonly DisplayedMove[]
}

/**
 * The planner's program with a row for every shim change, slide and axial move that may happen. For
 * bodies on three rows or more the shims are columns of their own, within `flat` of the plane in
 * which the body lies; that plane is the least-squares one through the shims, so that nothing is
 * moved that no shim moves.
 */
export function choosing(train: Train, found: readonly AsFound[], program: Program): Choosing {
  const { shims, leave } = train.plan
  if (!shims) throw new RangeError('the train has no shims')
  const plates = new Plates(shims.stock, shims.most)
  const frame = frameOf(train, found)
  const heights = withLooseShims(frame, program, shims.flat)
  const limits = [...heights.program.limits]
  const choices: DisplayedMove[] = []
  const add = (choice: Omit<DisplayedMove, 'row'>, name: string, moved: Affine) => {
    if (moved.terms.size === 0) return
    const { kind, body } = choice
    const [foot = 0] = choice.feet
    choices.push({ ...choice, row: limits.length })
    limits.push({
      name,
      terms: [...moved.terms],
      lower: -reach,
      upper: reach,
      meaning: kind === 'axial' ? { fact: 'axial', body } : { fact: 'shim', body, foot },
    })
  }
  train.bodies.forEach((body, b) => {
    if (body.held) return
    if (body.may.rise)
      for (const feet of footGroupsOf(body)) {
        const within = (least: Micrometres) =>
          common(
            feet.flatMap((f) => {
              const foot = body.feet[f]
              return foot ? [footAllowed(shims, plates, foot, least)] : []
            }),
          )
        const choice = { kind: 'shim' as const, body: b, feet }
        const any = within(0)
        const allowed = { tidy: hasUnder(any, leave) ? within(leave) : any, any }
        const moved = heights.height(b, feet[0] ?? 0)
        add(
          { ...choice, ...allowed },
          `stand ${body.id} ${body.feet[feet[0] ?? 0]?.id ?? ''}`,
          moved,
        )
      }
    const any = notUnder(0)
    const free = { tidy: leave > 0 ? notUnder(leave) : any, any }
    for (const { x, feet } of body.rows) {
      const moved = frame.displacement(b, { x, y: 0, z: 0 }, 'dy', 'own')
      add({ kind: 'slide', body: b, feet, ...free }, `slid ${body.id} ${x}`, moved)
    }
    const along = frame.displacement(b, { x: body.x0, y: 0, z: 0 }, 'dx', 'own')
    add({ kind: 'axial', body: b, feet: [], ...free }, `along ${body.id}`, along)
  })
  return { program: { ...heights.program, limits }, choices }
}
