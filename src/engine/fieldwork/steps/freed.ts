import { tol } from '../../../mechanics/tolerances'
import { fineText, toldDigits } from '../../../language/amounts'
import { capital, inSentence, listed } from '../../../language/names'
import { micrometresPer, type Micrometres } from '../../../mechanics/units'
import type { Train } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import type { Action } from './action'
import type { StepFootAnswer } from './answer'
import { practice } from './cautions'
import type { Instead } from './instead'
import { liftPathOf } from './liftPath'
import { limitKey, type LimitPassed } from './limits'

/**
 * The most room over the packs, in whole steps of the digits people read, with which a step that shims passes nothing
 * by being lifted; undefined where none that shims can be slipped through does.
 * @param known what it passes where it ends, lifted or not
 */
function slipThatKeeps(
  train: Train,
  motions: readonly Motion[],
  action: Action,
  feet: readonly StepFootAnswer[],
  known: readonly LimitPassed[],
): Micrometres | undefined {
  const keeps = (slip: Micrometres) => {
    const { passed } = liftPathOf(train, motions, action, feet, slip)
    return passed.every((one) =>
      known.some(
        (other) => limitKey(other) === limitKey(one) && one.by <= other.by * (1 + tol.lastDigits),
      ),
    )
  }
  const { fine } = train.units
  const digit = { um: 1, mm: 0.01, mil: 0.1 }[fine] * micrometresPer[fine]
  let low = Math.ceil(practice.leastSlip / digit)
  let high = Math.ceil(train.plan.slip / digit - tol.wholeStep)
  if (low >= high || !keeps(low * digit)) return undefined
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (keeps(middle * digit)) low = middle
    else high = middle
  }
  return low * digit
}

/**
 * What would free a step that passes limits by being lifted: less room to slip, or what is in the way taken away, all of
 * it: the way with least is told, and of what it passes none alone is enough.
 * @param more what it passes by being lifted, each of which is told
 * @param known what it passes where it ends, lifted or not
 */
export function freedFrom(
  train: Train,
  motions: readonly Motion[],
  action: Action,
  feet: readonly StepFootAnswer[],
  {
    more,
    known,
  }: { readonly more: readonly LimitPassed[]; readonly known: readonly LimitPassed[] },
): (passed: LimitPassed) => Instead & { readonly slip?: Micrometres } {
  const slip = slipThatKeeps(train, motions, action, feet, known)
  return (passed) => {
    const others =
      more.length > 1 ? ', and so with every other limit that this step passes by being lifted' : ''
    const way = `${takenAway(train, passed)}${others}`
    if (slip === undefined)
      return {
        words: `Less room to slip shims does not keep ${more.length > 1 ? 'all of them' : 'it'}. ${capital(way)}.`,
      }
    const kept = known.length > 0 ? 'passes nothing more by being lifted' : 'keeps every limit'
    return {
      words: `With ${toldDigits(slip, train.units)} in place of ${fineText(train.plan.slip, train.units)} of room to slip shims this step ${kept}. Or ${way}.`,
      slip,
    }
  }
}

/** What takes a limit of the way away; the step ends inside it. */
function takenAway(train: Train, { limit, body, foot, restraint, coupling }: LimitPassed): string {
  const name = inSentence(train.bodies[body]?.name ?? '')
  switch (limit) {
    case 'restraint':
      return `break ${restraint ?? 'the flange'} of ${name} loose before it is lifted, make it up afterwards and prove pipe strain again`
    case 'lift':
      return `give foot ${foot ?? ''} of ${name} more height on its bolt, its nut off or a longer bolt, before it is lifted`
    case 'shaft ends': {
      const { left, right } = train.couplings[coupling ?? -1] ?? { left: body, right: body }
      const others = [left, right].filter((m) => m !== body)
      return `loosen ${listed(others.map((m) => inSentence(train.machines[m]?.name ?? '')))} and make room along the train first`
    }
    case 'shim key':
      return `draw the key or dowel of foot ${foot ?? ''} of ${name} before it is lifted`
    case 'tilt':
      return `ask who set the tilt limit whether ${name} may pass it at rest, drained`
    case 'stage':
      return `take away what keeps the other end of ${name} down, or have it agreed that one end may go farther ahead`
    case 'hole':
    case 'side key':
      return `make room beside foot ${foot ?? ''} of ${name} first`
    case 'minimum pack':
    case 'maximum pack':
      return `make room under foot ${foot ?? ''} of ${name} first`
  }
}
