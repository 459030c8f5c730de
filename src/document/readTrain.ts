import { trainDocument, type TrainDocument } from './schema'
import { convertCoupling } from './convertCoupling'
import { convertMachine, convertSkid } from './convertBody'
import { Door } from './unitConverter'
import { jsonFault } from './jsonFault'
import { meaningRefusals } from './meaningRefusals'
import type { State, Train } from '../mechanics/train'
import type { Refusal } from './refusal'
import { shapeRefusals } from './shapeRefusals'
import { undetermined } from './undetermined'

/** Largest document that is read, in characters. */
export const largestDocument = 10_000_000

/** Common practice, no source (um): a foot off its plane, a move not worth making, a lift of one end ahead of the other. */
export const usualFlat = 25
export const usualLeave = 20
export const usualStage = 500

export type ReadResult =
  | { readonly ok: true; readonly document: TrainDocument; readonly train: Train }
  | { readonly ok: false; readonly refused: readonly Refusal[] }

/** Reads the text of a train file; refuses text that is too long or no JSON, naming line and column. */
export function readTrainText(text: string): ReadResult {
  if (text.length > largestDocument)
    return refuse('', `the document has ${text.length} characters: at most 10 MB are read`)
  let input: unknown
  try {
    input = JSON.parse(text)
  } catch {
    const fault = jsonFault(text)
    const where = fault
      ? `line ${fault.line}, column ${fault.column}: ${fault.why}`
      : 'nested too deeply'
    return refuse('', `not a JSON document: ${where}; repair the text there`)
  }
  return readTrain(input)
}

/** Reads a parsed train file: checks shape, then meaning, then size, then whether readings suffice. */
export function readTrain(input: unknown): ReadResult {
  const shape = trainDocument.safeParse(input)
  if (!shape.success) return { ok: false, refused: shapeRefusals(shape.error, input) }
  const document = shape.data
  const meaning = meaningRefusals(document)
  if (meaning.length > 0) return { ok: false, refused: meaning }
  const door = new Door({ ...document.units, temperature: document.units.temperature ?? 'C' })
  const train = convert(document, door)
  if (door.refused.length > 0) return { ok: false, refused: door.refused }
  const open = train.couplings.flatMap((coupling) => undetermined(coupling))
  if (open.length > 0) return { ok: false, refused: open }
  return { ok: true, document, train }
}

function convert(document: TrainDocument, door: Door): Train {
  const skids = document.skids ?? []
  const machines = document.machines.map((machine, i) => {
    const skid = skids.findIndex(({ carries }) => carries.includes(machine.id))
    const index = skid < 0 ? undefined : document.machines.length + skid
    return convertMachine(machine, `machines[${i}]`, index, door)
  })
  const plan = document.plan ?? {}
  return {
    name: document.name,
    units: { ...document.units, temperature: document.units.temperature ?? 'C' },
    seenFrom: document.clock.seenFrom,
    sides: document.sides ?? { three: "toward 3 o'clock", nine: "toward 9 o'clock" },
    bodies: [...machines, ...skids.map((skid, i) => convertSkid(skid, `skids[${i}]`, door))],
    machines,
    couplings: document.couplings.map((coupling, i) =>
      convertCoupling(coupling, `couplings[${i}]`, document.machines, door),
    ),
    states: statesOf(document),
    plan: {
      share: plan.share ?? 1,
      weights: {
        shim: plan.weights?.shim ?? 1,
        side: plan.weights?.side ?? 1,
        axial: plan.weights?.axial ?? 1,
      },
      reserve: door.fine(plan.reserve ?? 0, 'plan.reserve'),
      ...(plan.shims && {
        shims: {
          step: door.fine(plan.shims.step, 'plan.shims.step'),
          stock: plan.shims.stock.map((thickness, i) =>
            door.fine(thickness, `plan.shims.stock[${i}]`),
          ),
          most: plan.shims.most ?? 4,
          rebuild: plan.shims.rebuild ?? false,
          flat:
            plan.shims.flat === undefined
              ? usualFlat
              : door.fine(plan.shims.flat, 'plan.shims.flat'),
        },
      }),
      leave: plan.leave === undefined ? usualLeave : door.fine(plan.leave, 'plan.leave'),
      stage: plan.stage === undefined ? usualStage : door.fine(plan.stage, 'plan.stage'),
    },
  }
}

/** Without states the train is judged in one, "cold", without growth. */
function statesOf(document: TrainDocument): State[] {
  const states = document.states ?? []
  if (states.length === 0) return [{ id: 'cold', name: 'cold', factor: 1 }]
  return states.map(({ id, name, tolerance }) => ({ id, name, factor: tolerance ?? 1 }))
}

const refuse = (at: string, why: string): ReadResult => ({ ok: false, refused: [{ at, why }] })
