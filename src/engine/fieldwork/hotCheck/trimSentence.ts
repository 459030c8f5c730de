import { shareAsked } from '../../../language/askedShare'
import { shareText, toldNought, toldText } from '../../../language/amounts'
import { ranAt } from '../../../language/hotCheckWords'
import { bodiesInWords, capital, listed } from '../../../language/names'
import { bestBesideAsked } from '../../../language/roundedAmounts'
import type { HotCheck } from '../../../mechanics/hotCheck'
import type { Train } from '../../../mechanics/train'
import type { TrimAnswer, TrimPlanAnswer } from './answer'

/** Whether a trim pays, with the least one, in one or two sentences. */
export function trimSentence(train: Train, check: HotCheck, trim: TrimAnswer): string {
  const state = train.states[check.state]?.name ?? ''
  if (trim.when === 'open')
    return `Whether a trim pays cannot be told: no coupling is known as it ran in “${state}”.`
  const { share = 0, band = [0, 0] } = trim
  const coupling = train.couplings.find(({ id }) => id === trim.coupling)?.name ?? ''
  const lead = `In “${state}” ${ranAt(coupling, share)} (${shareText(band[0])} to ${shareText(band[1])}, 19 times of 20)`
  const asked = shareAsked(train.plan)
  const plan = trim.plan && planWords(train, trim.plan)
  switch (trim.when) {
    case 'now':
      return `${capital(lead)}, out by ${shareText(share - 1)}: a trim is worth it now, before it runs again${plan ?? '.'}`
    case 'next stop':
      return trim.tolerance === 'in' || share <= 1
        ? `${capital(lead)}; ${asked}${trim.tolerance === 'in' ? '' : ', and that it is within its tolerance is not shown'}: a trim is worth it at the next stop${plan ?? '.'}`
        : `${capital(lead)}, out by ${shareText(share - 1)} as read, which is not shown for certain: a trim is worth it at the next stop, and another hot check before${plan ?? '.'}`
    case 'not':
      return trim.asked === 'in'
        ? `${capital(lead)}; ${asked}: no trim pays.`
        : `${capital(lead)}; ${asked}, and these readings do not show that it is used up: no trim is shown to pay; read again before anything is moved.`
  }
}

/** The least trim behind a colon, or why there is none. */
function planWords(train: Train, plan: TrimPlanAnswer): string {
  switch (plan.status) {
    case 'planned': {
      const { shim = 0, side = 0, axial = 0 } = plan.total ?? {}
      const parts = [
        ['shims', shim],
        ['slides', side],
        ['along', axial],
      ] as const
      const told = parts.filter(([, sum]) => !toldNought(sum, train.units))
      const bodies = train.bodies.filter(({ id }) => plan.bodies.includes(id))
      const each = told.map(([what, sum]) => `${what} ${toldText(sum, train.units)}`)
      const all = toldText(shim + side + axial, train.units)
      return `: ${bodiesInWords(bodies)}, ${all} in all${each.length > 1 ? ` (${listed(each)})` : ''}${plan.rounded ? ', rounded to the shims of the store' : ''}; the tightest coupling then uses ${shareText(plan.worstShare ?? 0)} of its tolerance in every state.`
    }
    case 'in-tolerance':
      return '; by the growth that was found nothing needs to move.'
    case 'impossible':
      return `. No trim reaches what is asked for: the best reachable is ${bestBesideAsked(plan.floor ?? NaN, train.plan.share)}.`
    case 'unproven':
    case 'stopped':
      return '. No trim is told: the planner stopped, or its plan did not pass the proof.'
  }
}
