import { footLimitWords } from '../../language/footLimitWords'
import { listed } from '../../language/names'
import { toothPlaceName } from '../../language/toothWords'
import { wayInWords } from '../../language/sides'
import type { Train } from '../../mechanics/train'
import type { BindingLimit } from './answer'

/** A limit that binds, in words: what it is called, and where it is. */
export interface LimitWords {
  /** minimum pack, maximum pack, lift, hole, tilt, restraint, shim key, side key, or a coupling's check. */
  readonly limit: string
  readonly where: string
}

/** "foot 1", "feet 1 and 2". */
export const feetInWords = ({
  foot,
  others = [],
}: {
  readonly foot: string
  readonly others?: readonly string[]
}): string => (others.length === 0 ? `foot ${foot}` : `feet ${listed([foot, ...others])}`)

/** Which of the two directions across the train a check is of; empty where it is of both, or along. */
export const checkWay = (way: Extract<BindingLimit, { kind: 'check' }>['way']): string =>
  way === 'y' ? 'sideways' : way === 'z' ? 'in height' : ''

export function limitWords(train: Train, limit: BindingLimit): LimitWords {
  if (limit.kind === 'check') {
    const coupling = train.couplings.find(({ id }) => id === limit.coupling)
    const state = train.states.find(({ id }) => id === limit.state)
    const way = checkWay(limit.way)
    const where = `${coupling?.name ?? ''}, ${state?.name ?? ''}`
    return { limit: limit.what, where: way === '' ? where : `${where}, ${way}` }
  }
  if (limit.kind === 'least') {
    const coupling = train.couplings.find(({ id }) => id === limit.coupling)
    const state = train.states.find(({ id }) => id === limit.state)
    return {
      limit: 'least angle',
      where: `${coupling?.name ?? ''}, ${toothPlaceName(limit.what)}, ${state?.name ?? ''}, ${checkWay(limit.way)}`,
    }
  }
  const name = train.bodies.find(({ id }) => id === limit.body)?.name ?? ''
  switch (limit.kind) {
    case 'foot': {
      const where = `${name} ${feetInWords(limit)}`
      const way =
        limit.toward && footLimitWords[limit.limit].tellsWay
          ? `, ${wayInWords(train, limit.toward)}`
          : ''
      return { limit: limit.limit, where: where + way }
    }
    case 'tilt':
      return { limit: 'tilt', where: name }
    case 'restraint':
      return {
        limit: 'restraint',
        where: `${name} ${limit.restraint}, ${wayInWords(train, limit.toward)}`,
      }
  }
}
