import type { DocumentUnits } from '../mechanics/units'
import { unitSign } from '../document/unitSign'
import type { BreakAnswer, StepAnswer, StepsAnswer } from '../engine/fieldwork/steps/answer'
import { inUnits } from './inUnits'
import { expectedJson, move } from './planJson'
import { written, type MeasuresOf } from './written'

const step: MeasuresOf<StepAnswer> = {
  feet: {
    shim: 'fine',
    side: 'fine',
    axial: 'fine',
    packBefore: 'fine',
    packAfter: 'fine',
    out: 'fine',
    use: 'fine',
    lift: 'fine',
    room: 'fine',
  },
  poses: { move },
  dials: { shows: 'fine', good: 'fine' },
  stops: { count: 'as it is', each: 'fine' },
  load: { total: 'mass', corners: { load: 'mass' }, jack: 'mass', rating: 'mass' },
  expected: 'as it is',
  judge: { left: 'fine' },
  gaps: { should: 'length', good: 'length' },
  breaks: 'as it is',
  standing: { move },
}

/** The order of work in the document's units. */
export const stepsJson = (all: StepsAnswer, units: DocumentUnits) => ({
  ...all,
  steps: all.steps.map((one) => ({
    ...written(one, step, units),
    expected: expectedJson(one.expected, units),
    breaks: breaksJson(one.breaks, units),
  })),
  breaks: breaksJson(all.breaks, units),
})

/** Limits passed on the way, each with its unit. */
const breaksJson = (breaks: readonly BreakAnswer[], units: DocumentUnits) =>
  breaks.map(({ step: id, limit, where, by, quantity, slip, ...rest }) => ({
    step: id,
    limit,
    where,
    by: inUnits(by, quantity, units),
    unit: unitSign(quantity, units),
    ...rest,
    ...(slip !== undefined && { slip: inUnits(slip, 'fine', units) }),
  }))

export type StepsJson = ReturnType<typeof stepsJson>
