import { shareText } from '../../../language/amounts'
import { slopeSign } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import type { Member } from '../elastic/limit'
import { footLimitWords } from '../../../language/footLimitWords'
import { inSentence } from '../../../language/names'
import type { ConflictMember } from './answer'
import { enough } from './sentence'

/**
 * What one member of a conflict asks, and what it alone would have to give.
 * @param lack um, or mrad for a tilt; for a tolerance in words already
 */
export function memberSentence(
  train: Train,
  member: Member,
  { where }: Pick<ConflictMember, 'where'>,
  lack: number | string | undefined,
): string {
  const alone = (size: string) => `; ${size} more there would do by itself`
  switch (member.kind) {
    case 'held': {
      const body = train.bodies[member.body]
      const why = body?.anchored === undefined ? '' : ` (${body.anchored})`
      return `${where} is ${why === '' ? 'held' : 'anchored'}${why}.`
    }
    case 'coupling':
      return `${where}: to be kept within ${shareText(train.plan.share)} of tolerance${
        typeof lack === 'string' && lack !== '' ? `; ${lack} would do by itself` : ''
      }.`
    case 'tilt': {
      const { name = '', tilt = 0 } = train.bodies[member.body] ?? {}
      const size = `${tilt} ${slopeSign(train.units)}`
      const more =
        typeof lack === 'number' ? alone(`${lack.toPrecision(2)} ${slopeSign(train.units)}`) : ''
      return `${inSentence(name)} may be tilted by ${size} from where it lies${more}.`.replace(
        /^t/,
        'T',
      )
    }
    case 'restraint':
      return `${where}: carried no further${typeof lack === 'number' ? alone(enough(lack, train)) : ''}.`
    case 'foot':
      return `${where}: ${footLimitWords[member.limit].reason}${
        typeof lack === 'number' ? alone(enough(lack, train)) : ''
      }.`
  }
}
