import { unitSign } from '../document/unitSign'
import type { AssumedAnswer, BuyAnswer, SureAnswer } from '../engine/chance/answer'
import type { Chance } from '../engine/chance/interval'
import { tidy } from '../language/tidy'
import type { DocumentUnits } from '../mechanics/units'
import { inUnits } from './inUnits'
import { measureOf } from './planJson'

const chanceJson = ({ chance, low, high }: Chance): Chance => ({
  chance: tidy(chance),
  low: tidy(low),
  high: tidy(high),
})

/** How sure a plan is, in the document's units and under the keys of the output contract. */
export function sureJson(answer: SureAnswer, units: DocumentUnits) {
  const { draws, seed, all, reread, asFound, couplings, bolts, half, double } = answer
  return {
    draws,
    seed,
    ...(all && { all: chanceJson(all) }),
    ...(reread && { reread: chanceJson(reread) }),
    asFound: chanceJson(asFound),
    couplings: couplings.map(({ coupling, state, chance, band, u }) => ({
      coupling,
      state,
      chance,
      ...(band && { band: [tidy(band[0]), tidy(band[1])] }),
      u: u.map(({ what, y, z, x }) => {
        const told = (value: number) => inUnits(value, measureOf[what], units)
        return {
          what,
          ...(y !== undefined && { y: told(y) }),
          ...(z !== undefined && { z: told(z) }),
          ...(x !== undefined && { x: told(x) }),
        }
      }),
    })),
    ...(bolts && { bolts: chanceJson(bolts) }),
    ...(half !== undefined && { half }),
    ...(double !== undefined && { double }),
    ...(answer.buys && { buys: answer.buys.map((buy) => buyJson(buy, units)) }),
    ...(answer.assumed && { assumed: answer.assumed.map((one) => assumedJson(one, units)) }),
    ...(answer.wanted && { wanted: answer.wanted }),
  }
}

const buyJson = ({ what, where, exact, halved, cost }: BuyAnswer, units: DocumentUnits) => ({
  what,
  where,
  exact,
  ...(halved !== undefined && { halved }),
  ...(cost !== undefined && { cost: inUnits(cost, 'fine', units) }),
})

const assumedJson = (one: AssumedAnswer, units: DocumentUnits) => ({
  where: one.where,
  what: [one.kind, one.of, one.detail].filter((part) => part).join(', '),
  ...(one.quantity === undefined
    ? { value: one.value }
    : { value: inUnits(one.value, one.quantity, units), unit: unitSign(one.quantity, units) }),
})
