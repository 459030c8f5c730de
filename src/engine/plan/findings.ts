import type { Body, Coupling, Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { closureChecks } from './closures'
import { doubtWords } from './closureWords'
import { towardSide } from '../../language/sides'
import { settingWords } from './settingWords'
import { fineText } from '../../language/amounts'
import type { Finding } from './answer'
import { hasTeeth, rolledShafts, toothCheck } from './rollWords'

/** Residuals beyond this many standard uncertainties say that the readings contradict each other. */
const wideResidual = 3

/** What the engineer should know about the train as found, before any plan. */
export function findingsOf(train: Train, found: readonly AsFound[]): Finding[] {
  return [
    ...train.bodies.flatMap((body) => [...ofFeet(train, body), ...ofRoll(train, body)]),
    ...train.couplings.flatMap((coupling, c) => [
      ...ofSetting(train, coupling),
      ...closureChecks(train, coupling)
        .filter(({ within }) => !within)
        .map((check) => ({
          where: coupling.found[check.set]?.place ?? coupling.place,
          what: `${coupling.name}: top + bottom and left + right differ by ${fineText(Math.abs(check.value), train.units)}; read this set again: ${doubtWords(train, check)}`,
        })),
      ...((found[c]?.residual ?? 0) > wideResidual
        ? [
            {
              where: `${coupling.place}.found`,
              what: `${coupling.name}: the sets contradict each other by ${(found[c]?.residual ?? 0).toFixed(1)} times their uncertainty`,
            },
          ]
        : []),
    ]),
  ]
}

/** A roll to show what a gear's roll does (mrad). */
const shownRoll = 0.1

/** A gear whose roll was freed: what that may do to both shafts, before any plan uses it. */
function ofRoll(train: Train, body: Body): Finding[] {
  if (body.held || !body.may.roll || !hasTeeth(body)) return []
  const feet = `its feet ${towardSide(train, 1)} up`
  return [
    {
      where: `${body.place}.free.roll`,
      what: `${body.name} may be rolled: ${shownRoll.toFixed(1)} mrad, ${feet}, would carry ${rolledShafts(train, body, shownRoll)}; ${toothCheck}`,
    },
  ]
}

/** A maker's cold setting is always told: used, it stands in place of growth; else growth contradicts it or not. */
function ofSetting(train: Train, coupling: Coupling): Finding[] {
  const words = settingWords(train, coupling)
  return words ? [{ where: `${coupling.place}.setting`, what: withoutStop(words.sentence) }] : []
}

const withoutStop = (sentence: string) => sentence.replace(/\.$/, '')

/** Limits already passed as found: the plan may stay there, and goes no further. */
function ofFeet(train: Train, body: Body): Finding[] {
  const { units, plan } = train
  return body.feet.flatMap((foot) => {
    const out: Finding[] = []
    const name = `${body.name} foot ${foot.id}`
    const { hole, pack } = foot
    if (hole) {
      const off = Math.hypot(hole.x, hole.y)
      const room = hole.clearance / 2 - off
      if (room <= 1e-9)
        out.push({
          where: `${foot.place}.hole`,
          what: `bolt of ${name} already touches its hole: it may stay there and move away, no further`,
        })
      else if (room < plan.reserve - 1e-9)
        out.push({
          where: `${foot.place}.hole`,
          what: `bolt of ${name} has ${fineText(room, units)} of room, less than the ${fineText(plan.reserve, units)} to keep: it may stay there and move away, no further`,
        })
    }
    if (pack && pack.now < pack.min)
      out.push({
        where: `${foot.place}.pack`,
        what: `pack of ${name} is ${fineText(pack.now, units)}, already under its minimum ${fineText(pack.min, units)}: nothing may come out`,
      })
    if (pack?.max !== undefined && pack.now > pack.max)
      out.push({
        where: `${foot.place}.pack`,
        what: `pack of ${name} is ${fineText(pack.now, units)}, already over its maximum ${fineText(pack.max, units)}: nothing may be added`,
      })
    if (foot.lift !== undefined && foot.lift < 0)
      out.push({
        where: `${foot.place}.lift`,
        what: `${name} already stands ${fineText(-foot.lift, units)} above its highest: it may not rise`,
      })
    return out
  })
}
