import { metric } from './metric'
import type { Random } from './random'
import { ofAnyPlan, spreadIn, type Judged } from './sure/covariance'
import type { Coupling, Train } from './train'

/** How many standard uncertainties fit between the share of a tolerance that a plan may use and all of it. */
const roomOf = ({ check, covariance }: Judged, share: number): number =>
  ((1 - share) * check.limit) /
  Math.max(spreadIn(covariance, 1, 0), spreadIn(covariance, 0, 1), 1e-9)

/** Draws how much room errors are given, and gives it. */
export function roomy(train: Train, dice: Random): Train {
  const wanted = dice.pick([0.3, 0.6, 0.9, 1.3, 1.8])
  return filled(widened(train, wanted), wanted)
}

/** The share that leaves errors some room: nothing does where all of a tolerance may be used. */
const usedShare = ({ plan }: Train): number =>
  plan?.share === undefined || plan.share === 1 ? 0.8 : plan.share

/**
 * The same train with tolerances widened until a plan at the edge of its share has so much room: a
 * narrower tolerance would only make the train impossible.
 */
function widened(train: Train, wanted: number): Train {
  const judged = ofAnyPlan(metric(train))
  const couplings = train.couplings.map((c): Coupling => {
    const times = (gap: boolean) => {
      const own = judged.filter(
        (one) => one.joint.c.id === c.id && (one.check.what === 'gap') === gap,
      )
      return Math.max(1, ...own.map((one) => wanted / roomOf(one, usedShare(train))))
    }
    const wider = (limit: number | undefined, by: number) =>
      limit === undefined ? undefined : Number((limit * by).toPrecision(3))
    const [across, along] = [times(false), times(true)]
    const { flex, offset, angle } = c.tolerance
    return {
      ...c,
      tolerance: {
        ...c.tolerance,
        flex: wider(flex, across),
        offset: wider(offset, across),
        angle: wider(angle, across),
      },
      ...(c.axial && {
        axial: { ...c.axial, tolerance: wider(c.axial.tolerance, along) ?? NaN },
      }),
    }
  })
  return { ...train, couplings }
}

/** The same train with its share raised until no more than so much room is left: else all is certain. */
function filled(train: Train, wanted: number): Train {
  const share = usedShare(train)
  const rooms = ofAnyPlan(metric(train)).map((one) => roomOf(one, share))
  const least = Math.min(...rooms)
  if (train.plan?.share === undefined || train.plan.share === 1 || least <= wanted) return train
  const raised = Number((1 - ((1 - share) * wanted) / least).toFixed(3))
  return { ...train, plan: { ...train.plan, share: Math.min(0.999, raised) } }
}
