import { oneSided } from '../../lp/relax'
import type { Micrometres } from '../../../mechanics/units'
import {
  leastRelaxation,
  withRelaxations,
  type Relaxation,
} from '../../infeasible/elastic/relaxation'
import type { FloorCause } from '../../infeasible/floor/floorCause'
import type { FloorSetting } from '../../infeasible/floor/floorReason'
import type { LimitWeight } from '../../infeasible/floor/dualWeights'
import { footLimitWords } from '../../../language/footLimitWords'
import { limitSides } from '../../../mechanics/footLimits'
import { reach, programUnit, type Meaning, type Program } from '../../lp/program'

/** Room that would make a choice possible if every limit of these kinds and bodies had that much more. */
export interface MissingRoom {
  readonly props: readonly LimitWeight[]
  readonly amount: Micrometres
}

/**
 * The least room that is missing where a floor is held by limits: at those of the kind that matters
 * most if room there is enough; else at all that hold it; else at all of those kinds in the same part.
 * @returns undefined where room there is not enough, or what holds it is an angle or a key
 */
export function lackOf(setting: FloorSetting, cause: FloorCause): MissingRoom | undefined {
  const { group, props } = cause
  const [first] = props
  if (!group || !first) return undefined
  const cuts = setting.parts.knownFloor(group)?.cuts ?? []
  const program = oneSided(setting.parts.part(group).program)
  const sameKind = props.filter(({ meaning }) => meaning.fact === first.meaning.fact)
  const kinds = new Set(props.map(({ meaning, side }) => `${meaning.fact} ${side}`))
  const everywhere = propsOf(program).filter(({ meaning, side }) =>
    kinds.has(`${meaning.fact} ${side}`),
  )
  for (const alike of [sameKind, props, everywhere]) {
    if (alike.some(({ meaning }) => !isRoom(meaning))) continue
    const give = roomFor(alike)
    const { share } = setting.train.plan
    const found = leastRelaxation(
      withRelaxations(program, [give]),
      [give],
      share,
      cuts,
      setting.solver,
    )
    const amount = found?.[0]
    if (amount !== undefined) return { props: alike, amount: amount * programUnit }
  }
  return undefined
}

/** Every limit of a part that is no tolerance, without a price. */
function propsOf(program: Program): LimitWeight[] {
  const rows = program.limits.map((row): { meaning: Meaning; side: 'lower' | 'upper' } => ({
    meaning: row.meaning,
    side: Number.isFinite(row.upper) ? 'upper' : 'lower',
  }))
  const circles = program.circles.map(({ meaning }) => ({ meaning, side: 'upper' as const }))
  return [...rows, ...circles].flatMap(({ meaning, side }) =>
    meaning.fact === 'tolerance' || meaning.fact === 'least' ? [] : [{ meaning, side, price: 0 }],
  )
}

/** Limits that a length makes wider. */
const isRoom = (meaning: Meaning): boolean =>
  'foot' in meaning && meaning.fact !== 'shim'
    ? footLimitWords[limitSides[meaning.fact].upper].lacks !== undefined
    : meaning.fact === 'restraint'

/** The same room for all limits of the same bodies, kinds and sides: freeing one foot moves the next. */
function roomFor(props: readonly LimitWeight[]): Relaxation {
  const key = (meaning: Meaning, side: 'lower' | 'upper') =>
    'body' in meaning
      ? `${meaning.fact} ${meaning.body} ${meaning.fact === 'restraint' ? meaning.way : ''} ${side}`
      : ''
  const wanted = new Set(props.map(({ meaning, side }) => key(meaning, side)))
  return {
    name: 'more room',
    least: 0,
    most: reach,
    price: 1,
    onRow: (row) => {
      const side = Number.isFinite(row.upper) ? 'upper' : 'lower'
      if (!wanted.has(key(row.meaning, side))) return 0
      return side === 'upper' ? -1 : 1
    },
    onCircle: ({ meaning }) => (wanted.has(key(meaning, 'upper')) ? { radius: 1 } : {}),
  }
}
