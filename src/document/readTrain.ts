import { trainDocument, type TrainDocument } from './schema'
import { askedOf, askedWords } from './asked'
import { betweenOf } from './betweenStates'
import { convertCoupling } from './convertCoupling'
import { convertMachine, convertSkid } from './convertBody'
import { absurdHeat } from './heat'
import { harmlessTexts } from './harmlessTexts'
import { convertHotCheck } from './convertHotCheck'
import { convertOutage } from './outages'
import { convertSurvey } from './convertSurvey'
import { inEngineUnits } from './unitConverter'
import { isTooDeep, tooDeep } from './depth'
import { jsonFault } from './jsonFault'
import { meaningRefusals } from './meaningRefusals'
import type { State, SureSettings, Train } from '../mechanics/train'
import type { Refusal } from './refusal'
import { shapeRefusals } from './shapeRefusals'
import { hotUndetermined, outagesUndetermined, undetermined } from './undetermined'

/** Largest document that is read, in characters. */
export const largestDocument = 10_000_000

/**
 * Common practice, no source (um): a foot off its plane, a move not worth making, a lift of one end ahead of the other,
 * a foot clear of its pack.
 */
const usualFlat = 25
const usualLeave = 20
const usualStage = 500
const usualSlip = 1000
/** Draws from which a chance is told: its interval is then a point either way at most. */
const usualDraws = 10_000

export type ReadResult =
  | { readonly ok: true; readonly document: TrainDocument; readonly train: Train }
  | { readonly ok: false; readonly refused: readonly Refusal[] }

/** Reads the text of a train file; refuses text that is too long or no JSON, naming line and column. */
export function readTrainText(text: string): ReadResult {
  if (text.length > largestDocument)
    return refuse('', `the document has ${text.length} characters: at most 10 MB are read`)
  const { fault, twins } = jsonFault(text)
  if (fault)
    return refuse(
      '',
      `not a JSON document: line ${fault.line}, column ${fault.column}: ${fault.why}; repair the text there`,
    )
  if (twins.length > 0) return { ok: false, refused: twins }
  return readTrain(JSON.parse(text))
}

/** Reads a parsed train file: checks depth, then shape, then meaning, then size, then whether readings suffice. */
export function readTrain(input: unknown): ReadResult {
  if (isTooDeep(input)) return refuse('', tooDeep)
  const shape = trainDocument.safeParse(input)
  if (!shape.success) return { ok: false, refused: shapeRefusals(shape.error, input) }
  const document = shape.data
  const meaning = meaningRefusals(document)
  if (meaning.length > 0) return { ok: false, refused: meaning }
  const inside = inEngineUnits(document)
  const absurd = [...inside.refused, ...absurdHeat(inside.document)]
  if (absurd.length > 0) return { ok: false, refused: absurd }
  const asked = askedOf(document)
    // what is read again belongs to the work, not to the plan
    .filter(({ at }) => !at.startsWith('record'))
    .map((one) => ({ place: one.at, words: askedWords(document, one) }))
  const train = { ...convert(harmlessTexts(inside.document)), asked }
  const open = [
    ...train.couplings.flatMap(undetermined),
    ...hotUndetermined(train),
    ...outagesUndetermined(train),
  ]
  if (open.length > 0) return { ok: false, refused: open }
  return { ok: true, document, train }
}

/** The train of a document that is in engine units, but for what it says its units are. */
function convert(document: TrainDocument): Omit<Train, 'asked'> {
  const skids = document.skids ?? []
  const states = statesOf(document)
  const machines = document.machines.map((machine, i) => {
    const skid = skids.findIndex(({ carries }) => carries.includes(machine.id))
    const index = skid < 0 ? undefined : document.machines.length + skid
    return convertMachine(machine, `machines[${i}]`, index, states)
  })
  const plan = document.plan ?? {}
  return {
    name: document.name,
    units: { ...document.units, temperature: document.units.temperature ?? 'C' },
    seenFrom: document.clock.seenFrom,
    ...(document.checkEvery !== undefined && { checkEvery: document.checkEvery }),
    sides: document.sides ?? { three: "toward 3 o'clock", nine: "toward 9 o'clock" },
    bodies: [...machines, ...skids.map((skid, i) => convertSkid(skid, `skids[${i}]`))],
    machines,
    couplings: document.couplings.map((coupling, i) =>
      convertCoupling(coupling, `couplings[${i}]`, document.machines),
    ),
    states,
    surveys: (document.surveys ?? []).map((survey, i) =>
      convertSurvey(survey, i, document.machines),
    ),
    outages: (document.outages ?? []).map(convertOutage),
    hotChecks: (document.hotChecks ?? []).map((check, i) => convertHotCheck(check, i, document)),
    plan: {
      share: plan.share ?? 1,
      weights: {
        shim: plan.weights?.shim ?? 1,
        side: plan.weights?.side ?? 1,
        axial: plan.weights?.axial ?? 1,
      },
      reserve: plan.reserve ?? 0,
      ...(plan.shims && {
        shims: {
          step: plan.shims.step,
          stock: plan.shims.stock,
          most: plan.shims.most ?? 4,
          rebuild: plan.shims.rebuild ?? false,
          flat: plan.shims.flat ?? usualFlat,
        },
      }),
      leave: plan.leave ?? usualLeave,
      stage: plan.stage ?? usualStage,
      slip: plan.slip ?? usualSlip,
      guard: plan.guard ?? 0,
      worst: plan.worst ?? false,
      ...(plan.sure && {
        sure: convertSure(plan.sure),
      }),
    },
  }
}

function convertSure(sure: NonNullable<NonNullable<TrainDocument['plan']>['sure']>): SureSettings {
  const { shim, slide, foot, chance, draws = usualDraws, seed = 1 } = sure
  return {
    ...(shim !== undefined && { shim }),
    ...(slide !== undefined && { slide }),
    ...(foot !== undefined && { foot }),
    ...(chance !== undefined && { chance }),
    draws,
    seed,
  }
}

/** Without states the train is judged in one, "cold", without growth. */
function statesOf(document: TrainDocument): State[] {
  const states = document.states ?? []
  if (states.length === 0) return [{ id: 'cold', name: 'cold', factor: 1 }]
  return states.map((state) => {
    const { id, name, tolerance, load, temperature } = state
    const between = betweenOf(state, states)
    return {
      id,
      name,
      factor: tolerance ?? 1,
      ...(load !== undefined && { load }),
      ...(temperature !== undefined && { temperature }),
      ...(between && { between }),
    }
  })
}

const refuse = (at: string, why: string): ReadResult => ({ ok: false, refused: [{ at, why }] })
