import { platesAddUp } from '../../mechanics/packRange'
import type { Body, Coupling, Train } from '../../mechanics/train'
import type { AsFound } from '../../mechanics/readings/asFound'
import { runOutFindings } from './coupledWords'
import { closureChecks } from './closures'
import { doubtWords } from './closureWords'
import { footLimitWords } from '../../language/footLimitWords'
import type { FootLimit } from '../../mechanics/footLimits'
import { pinsOut } from '../../language/pinWords'
import { towardSide } from '../../language/sides'
import { spoiledReading } from './spoiledWords'
import { sourceSaid } from '../../language/growthSourceWords'
import { methodsSaid } from '../../language/methodWords'
import { comparedSources } from '../../mechanics/uncertainty/growthSources'
import { comparedMethods } from '../../mechanics/uncertainty/methods'
import { settingWords } from './settingWords'
import { teethOf } from './teeth'
import { teethFindings } from './teethWords'
import { surveyFindings } from './surveysAnswer'
import { fineText, shareText } from '../../language/amounts'
import { shareAskedWords } from '../../language/askedShare'
import { bothReserve } from '../../language/keptWords'
import type { Finding } from './answer'
import { hasTeeth, rolledShafts, toothCheck } from './rollWords'

/** Residuals beyond this many standard uncertainties say that the readings contradict each other. */
const wideResidual = 3

/** What the engineer should know about the train as found, before any plan. */
export function findingsOf(train: Train, found: readonly AsFound[]): Finding[] {
  return [
    ...train.asked.map(({ place, words }) => ({ where: place, what: words })),
    ...(train.plan.guard > 0 && train.plan.share < 1
      ? [
          {
            where: 'plan.guard',
            what: bothReserve(
              train,
              `${shareText(train.plan.share)} of tolerance is ${shareAskedWords(train.plan)}`,
            ),
          },
        ]
      : []),
    ...train.bodies.flatMap((body) => [
      ...ofFeet(train, body),
      ...ofPlates(train, body),
      ...ofRoll(train, body),
      ...pinsOut(body).map((what) => ({ where: `${body.place}.pins`, what })),
    ]),
    ...ofGrowth(train),
    ...train.couplings.flatMap((coupling, c) => [
      ...ofSetting(train, coupling),
      ...runOutFindings(train, coupling),
      ...closureChecks(train, coupling)
        .filter(({ within }) => !within)
        .map((check) => ({
          where: coupling.found[check.set]?.place ?? coupling.place,
          what: `${coupling.name}: top + bottom and left + right differ by ${fineText(Math.abs(check.value), train.units)}; read this set again: ${doubtWords(train, check)}`,
        })),
      ...contradictions(coupling, found[c], train),
    ]),
    ...outageFindings(train),
    ...teethFindings(train, teethOf(train, found)),
    ...surveyFindings(train),
  ]
}

/**
 * Readings that contradict each other: the one that does not fit where they can tell, else by how much. A full sweep that
 * does not close says so itself.
 */
function contradictions(coupling: Coupling, found: AsFound | undefined, train: Train): Finding[] {
  const open = closureChecks(train, coupling).some(({ within }) => !within)
  const accused = spoiledReading(train, coupling)
  // one reading that is named explains why methods differ, and why its sweep does not close
  if (accused?.where.includes('.readings[')) return [accused]
  const spoiled = open ? undefined : accused
  const compared = comparedMethods(coupling)
  // where methods can be compared as a whole they are, and not once more number by number
  if (compared.length > 0)
    return compared
      .filter(({ agree }) => !agree)
      .map((one) => ({
        where: `${coupling.place}.found`,
        what: `${coupling.name}: ${methodsSaid(train, one)}; read one of them again before moving anything`,
      }))
  if (spoiled) return [spoiled]
  const residual = found?.aloneResidual ?? found?.residual ?? 0
  if (residual <= wideResidual) return []
  return [
    {
      where: `${coupling.place}.found`,
      what: `${coupling.name}: the sets contradict each other by ${residual.toFixed(1)} times their uncertainty`,
    },
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

/** Sources of growth that do not agree with the one in use. */
const ofGrowth = (train: Train): Finding[] =>
  comparedSources(train)
    .filter(({ agree }) => !agree)
    .map((one) => ({
      where: `${train.machines[one.machine]?.place ?? 'machines'}.growth`,
      what: `${sourceSaid(train, one)}; find out which of them holds before moving anything`,
    }))

/** Outages that are not as they were sealed, or tell of a coupling that is no more. */
const outageFindings = ({ outages, couplings }: Train): Finding[] =>
  outages.flatMap(({ place, name, sealed, couplings: read }) => [
    ...(sealed === false
      ? [
          {
            where: place,
            what: `the outage ${name} is not as it was when it was kept: something in it was changed; look for a copy of the file`,
          },
        ]
      : []),
    ...read
      .filter(({ coupling }) => !couplings.some(({ id }) => id === coupling))
      .map(({ coupling, place: at }) => ({
        where: at,
        what: `the outage ${name} tells of the coupling "${coupling}", which this train does not have: it is kept and compared with nothing`,
      })),
  ])

/** A maker's cold setting is always told: used, it stands in place of growth; else growth contradicts it or not. */
function ofSetting(train: Train, coupling: Coupling): Finding[] {
  const words = settingWords(train, coupling)
  return words ? [{ where: `${coupling.place}.setting`, what: withoutStop(words.sentence) }] : []
}

const withoutStop = (sentence: string) => sentence.replace(/\.$/, '')

/** Limits already passed as found: the plan may stay there, and goes no further. */
function ofFeet(train: Train, body: Body): Finding[] {
  return body.feet.flatMap((foot) =>
    asFoundOrder.flatMap((limit) => {
      const passed = footLimitWords[limit].already(train, foot, `${body.name} foot ${foot.id}`)
      return passed ? [{ where: `${foot.place}.${passed.field}`, what: passed.what }] : []
    }),
  )
}

/** Plates that do not add up to their pack. */
function ofPlates(train: Train, body: Body): Finding[] {
  return body.feet.flatMap((foot) => {
    const { pack } = foot
    if (!pack?.plates || platesAddUp(pack)) return []
    const { plates, now } = pack
    const sum = plates.reduce((all, plate) => all + plate, 0)
    return [
      {
        where: `${foot.place}.pack.plates`,
        what: `plates of ${body.name} foot ${foot.id} add up to ${fineText(sum, train.units)}, and its pack is ${fineText(now, train.units)}: they are not counted on; measure the pack and write down each plate`,
      },
    ]
  })
}

/** Bolts first: whoever loosens one sees it. */
const asFoundOrder = (Object.keys(footLimitWords) as FootLimit[]).sort(
  (a, b) => Number(b === 'hole') - Number(a === 'hole'),
)
