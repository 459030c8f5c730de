import { shareText } from '../../../language/amounts'
import { keptClause } from '../../../language/keptWords'
import { fineAmount, slopeAmount } from '../../../language/roundedAmounts'
import { slopeSign } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import type { ElasticLimit } from '../elastic/limit'
import { footLimitWords } from '../../../language/footLimitWords'
import { inSentence } from '../../../language/names'
import type { Alone } from './alone'
import type { ConflictMember } from './answer'
import { tolerancesText } from './sentence'

/**
 * What one member of a conflict asks, and what it alone could do for the whole train.
 * @param alone undefined for a held body
 */
export function memberSentence(
  train: Train,
  member: ElasticLimit,
  { where }: Pick<ConflictMember, 'where'>,
  alone: Alone | undefined,
): string {
  const could = alone ? aloneInWords(train, member, alone) : ''
  switch (member.kind) {
    case 'held': {
      const body = train.bodies[member.body]
      const why = body?.anchored === undefined ? '' : ` (${body.anchored})`
      return `${where} is ${why === '' ? 'fixed' : 'anchored'}${why}.`
    }
    case 'coupling':
      return `${where}: to be kept within ${shareText(train.plan.share)} of tolerance${keptClause(train)}${could}.`
    case 'tilt': {
      const { name = '', tilt = 0 } = train.bodies[member.body] ?? {}
      const size = `${tilt} ${slopeSign(train.units)}`
      return `${inSentence(name)} may be tilted by ${size} from where it lies${could}.`.replace(
        /^t/,
        'T',
      )
    }
    case 'restraint':
      return `${where}: carried no further${could}.`
    case 'foot':
      return `${where}: ${footLimitWords[member.limit].reason}${could}.`
  }
}

/** Amounts that are enough are rounded up: what is entered as told is enough too. */
function aloneInWords(train: Train, member: ElasticLimit, alone: Alone): string {
  switch (alone.kind) {
    case 'unknown':
      return ''
    case 'never':
      return '; more there alone would not be enough'
    case 'beyond reason':
      return '; alone it would have to be more than ten times as large'
    case 'enough': {
      const { more } = alone
      if (member.kind === 'coupling')
        return `; a tolerance entered with ${tolerancesText(train, member.coupling, more, 'up')} would be enough by itself`
      if (member.kind === 'tilt')
        return `; ${slopeAmount(more.amount, 'up', train)} more would be enough by itself`
      const wider =
        member.kind === 'foot' && member.limit === 'hole'
          ? ` (a hole wider by ${fineAmount(2 * more.amount, 'up', train)})`
          : ''
      return `; ${fineAmount(more.amount, 'up', train)} more there would be enough by itself${wider}`
    }
  }
}
