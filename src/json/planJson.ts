import type { Band } from '../mechanics/misalignment/bands'
import type { DocumentUnits } from '../mechanics/units'
import type {
  AsFoundAnswer,
  BindingAnswer,
  BindingLimit,
  BodyAnswer,
  CheckAnswer,
  CheckReport,
  CouplingAnswer,
  ExpectedAnswer,
  FootAnswer,
  InToleranceAnswer,
  MovesAnswer,
  PlanFigures,
  PlannedAnswer,
  ProofAnswer,
  StandingAnswer,
  Totals,
} from '../engine/plan/answer'
import { limitWords } from '../engine/plan/limitWords'
import type { Train } from '../mechanics/train'
import { unitSign } from '../document/unitSign'
import { engineUnitsPer, inUnits, type Measure } from './inUnits'
import { axialJson } from './axialJson'
import { statorsJson } from './statorsJson'
import { teethJson } from './teethJson'
import { surveysJson } from './surveysJson'
import { written, type MeasuresOf } from './written'

const point: MeasuresOf<{ y: number; z: number }> = { y: 'fine', z: 'fine' }
const tilt: MeasuresOf<{ y: number; z: number }> = { y: 'slope', z: 'slope' }
export const line = { offset: point, slope: tilt } as const

export const totals: MeasuresOf<Totals> = { shim: 'fine', side: 'fine', axial: 'fine' }

export const move: MeasuresOf<BodyAnswer['move']> = {
  tx: 'fine',
  ty: 'fine',
  tz: 'fine',
  sy: 'slope',
  sz: 'slope',
  roll: 'slope',
}
export const bodies: MeasuresOf<BodyAnswer[]> = { move }

export const feet = {
  shim: 'fine',
  side: 'fine',
  axial: 'fine',
  packAfter: 'fine',
  boltAt: { x: 'fine', y: 'fine', room: 'fine' },
} as const satisfies MeasuresOf<FootAnswer[]>

const proof: MeasuresOf<ProofAnswer> = { bound: 'fine', gap: 'fine', worstViolation: 'fine' }

/** What a plan's own numbers measure; lists whose units differ from row to row are written apart. */
const figures: MeasuresOf<UnlistedFigures> = {
  share: 'as it is',
  guard: 'as it is',
  cost: 'fine',
  total: totals,
  bodies,
  feet,
  couplings: 'as it is',
  asFound: 'as it is',
  teeth: 'as it is',
  axial: 'as it is',
  stators: 'as it is',
  surveys: 'as it is',
  surveysTogether: 'as it is',
  worstShare: 'plain',
  standingShare: 'plain',
  standingKept: 'plain',
  floor: 'plain',
}
type UnlistedFigures = StandingAnswer & Omit<MovesAnswer, 'expected'>

/** A train as found in the document's units, with what else an answer of its status says. */
const standingJson = <Answer extends StandingAnswer>(answer: Answer, units: DocumentUnits) => ({
  ...(written<StandingAnswer>(answer, figures, units) as Answer),
  asFound: asFoundJson(answer.asFound, units),
  ...teethJson(answer, units),
  ...axialJson(answer, units),
  ...statorsJson(answer, units),
  ...surveysJson(answer, units),
})

/** An answer with moves, its limits that bind and readings to expect in the order of the contract. */
function movesJson(
  { expected, proof: proven, ...rest }: PlannedAnswer | InToleranceAnswer,
  prices: readonly BindingAnswer[],
  train: Train,
) {
  const { units } = train
  return {
    ...standingJson(rest, units),
    couplings: couplingsJson(rest.couplings, units),
    binding: bindingJson(train, prices),
    expected: expectedJson(expected, units),
    proof: written(proven, proof, units),
  }
}

/** A plan in the document's units, under the keys of the output contract. */
export function planJson(plan: PlanFigures, train: Train) {
  const { units } = train
  switch (plan.status) {
    case 'planned': {
      const { prices = [], ...moves } = plan
      return movesJson(moves, prices, train)
    }
    case 'in-tolerance':
      return movesJson(plan, [], train)
    case 'impossible':
      return standingJson(plan, units)
    case 'unproven':
      return { ...standingJson(plan, units), proof: written(plan.proof, proof, units) }
    case 'stopped':
      return standingJson(plan, units)
  }
}

/** What the checks of a coupling measure. */
export const measureOf: Record<CheckAnswer['what'], Measure> = {
  'left plane': 'slope',
  'right plane': 'slope',
  offset: 'fine',
  angle: 'slope',
  gap: 'length',
  stretch: 'length',
  float: 'length',
}

function checkJson(check: CheckAnswer, units: DocumentUnits): CheckAnswer {
  const own = measureOf[check.what]
  const ways = { y: own, z: own, x: own }
  return written(check, { ...ways, limit: own, share: 'plain', kept: ways }, units)
}

export const couplingsJson = (
  couplings: readonly CouplingAnswer[],
  units: DocumentUnits,
): CouplingAnswer[] =>
  couplings.map((coupling) => ({
    ...coupling,
    share: inUnits(coupling.share, 'plain', units),
    checks: coupling.checks.map((check) => checkJson(check, units)),
    asFound: {
      share: inUnits(coupling.asFound.share, 'plain', units),
      checks: coupling.asFound.checks.map((check) => checkJson(check, units)),
    },
  }))

/** How couplings lie as found, in the document's units. */
export const asFoundJson = (
  found: readonly AsFoundAnswer[],
  units: DocumentUnits,
): AsFoundAnswer[] =>
  found.map((entry) =>
    // shares by state are plain numbers without their last digits already
    written(entry, { at: 'length', ...line, u: line, residual: 'plain', share: 'as it is' }, units),
  )

/** What a limit that binds is worth: fine units of cost by the unit that stands beside it. */
export const limitJson = (train: Train, { limit, price, quantity, upTo }: BindingAnswer) => {
  const { units } = train
  return {
    ...limitWords(train, limit),
    part: limitPart(limit),
    price: inUnits(price * engineUnitsPer(quantity, units), 'fine', units),
    unit: unitSign(quantity, units),
    upTo: upTo === null ? null : inUnits(upTo, quantity, units),
  }
}

/** Ids of the part whose limit it is. */
interface LimitPart {
  body?: string
  foot?: string
  /** Every foot of a row that must give together. */
  feet?: string[]
  restraint?: string
  coupling?: string
  state?: string
  what?: string
  way?: string
}

function limitPart(limit: BindingLimit): LimitPart {
  switch (limit.kind) {
    case 'foot':
      return {
        body: limit.body,
        foot: limit.foot,
        ...(limit.others && { feet: [limit.foot, ...limit.others] }),
      }
    case 'tilt':
      return { body: limit.body }
    case 'restraint':
      return { body: limit.body, restraint: limit.restraint, way: limit.way }
    case 'least':
    case 'check': {
      const { coupling, state, what, way } = limit
      return { coupling, state, what, way }
    }
  }
}

export type BindingJson = ReturnType<typeof limitJson>

export const bindingJson = (train: Train, binding: readonly BindingAnswer[]) =>
  binding.map((limit) => limitJson(train, limit))

export const expectedJson = (
  expected: readonly ExpectedAnswer[],
  units: DocumentUnits,
): ExpectedAnswer[] =>
  expected.map((entry) =>
    'readings' in entry
      ? {
          ...entry,
          readings: entry.readings.map(([hour, value]) => [hour, inUnits(value, 'fine', units)]),
          ...(entry.good && { good: entry.good.map((band) => bandJson(band, units)) }),
        }
      : written(entry, { set: 'as it is', ...line, good: lineBands }, units),
  )

const lineBands = {
  offset: { y: 'fine', z: 'fine' },
  slope: { y: 'slope', z: 'slope' },
} as const

const bandJson = ([low, high]: Band, units: DocumentUnits): Band => [
  inUnits(low, 'fine', units),
  inUnits(high, 'fine', units),
]

/** What stands in a train file, in the document's units. */
export const reportJson = (
  report: Extract<CheckReport, { ok: true }>,
  units: DocumentUnits,
): Extract<CheckReport, { ok: true }> => ({
  ...report,
  closure: report.closure.map((entry) => ({
    ...entry,
    value: inUnits(entry.value, 'fine', units),
  })),
  growth: written(
    report.growth,
    {
      rows: { x: 'length', inUse: 'fine', beside: 'fine', u: 'fine', sigmas: 'plain' },
      limit: 'plain',
    },
    units,
  ),
  asFound: asFoundJson(report.asFound, units),
  ...teethJson(report, units),
  ...axialJson(report, units),
  ...statorsJson(report, units),
  ...surveysJson(report, units),
})
