import type { CouplingDocument, MachineDocument, SurveyDocument, TrainDocument } from '../schema'
import { couplingBetween, draftCouplingName, freeId, machineName, saidBody } from './bodies'
import { inserted, moved, removed } from '../place'
import { hotChecksUnused, hotChecksWith, isOf } from './hotCheckEdits'

/** A changed document, and what was done to it, in the past tense. */
export interface NamedEdit {
  readonly document: TrainDocument
  readonly name: string
}

const bodyIds = (document: TrainDocument): string[] =>
  [...document.machines, ...(document.skids ?? [])].map(({ id }) => id)

/** A machine of which nothing is known yet; what is missing is asked for on the sheet. */
const newMachine = (id: string): MachineDocument =>
  // not yet a machine of the train file: its height and its feet are still to be entered
  ({ id, name: '', axis: {}, feet: [] }) as unknown as MachineDocument

const newCoupling = (taken: readonly string[], left: string, right: string): CouplingDocument =>
  ({
    id: freeId(taken, `${left}-${right}`.slice(0, 80)),
    left: { machine: left },
    right: { machine: right },
    // sideways and up and down together, as makers mean it: the stricter reading where nobody says
    tolerance: { shape: 'round' },
    found: [],
  }) as unknown as CouplingDocument

/**
 * A new machine at a place of the train, counted from the left, joined to its neighbours. Between two
 * machines the coupling that was there goes on as the one to the new machine's left, with all its figures.
 */
export function addMachine(document: TrainDocument, index: number): NamedEdit {
  const id = freeId(bodyIds(document), 'machine')
  const left = document.machines[index - 1]
  const right = document.machines[index]
  const was = couplingBetween(document, left?.id, right?.id)
  const taken = document.couplings.map((coupling) => coupling.id)
  const kept = was && { ...was, right: { ...was.right, machine: id } }
  const first = kept ?? (left && newCoupling(taken, left.id, id))
  const second = right && newCoupling([...taken, ...(first ? [first.id] : [])], id, right.id)
  const machines = inserted(document.machines, index, newMachine(id))
  const couplings = ordered({ ...document, machines }, [
    ...document.couplings.filter((coupling) => coupling !== was),
    ...(first ? [first] : []),
    ...(second ? [second] : []),
  ])
  const where =
    left && right
      ? `between ${named(document, index - 1)} and ${named(document, index)}`
      : `at the ${left || !right ? 'right' : 'left'} end`
  const note = was
    ? `; the coupling ${draftCouplingName(document, was)} now leads to it, with its figures`
    : ''
  return { document: { ...document, machines, couplings }, name: `added a machine ${where}${note}` }
}

/**
 * The train without a machine. At an end its coupling goes with it; in between its two couplings become
 * one, with the tolerance of the left one and the outer planes. Readings of them describe neither and go.
 */
export function removeMachine(document: TrainDocument, index: number): NamedEdit {
  const machine = document.machines[index]
  if (!machine) return { document, name: '' }
  const left = document.machines[index - 1]
  const right = document.machines[index + 1]
  const before = couplingBetween(document, left?.id, machine.id)
  const after = couplingBetween(document, machine.id, right?.id)
  const gone = document.couplings.filter(
    ({ left: l, right: r }) => l.machine === machine.id || r.machine === machine.id,
  )
  const joined =
    left && right
      ? before
        ? { ...before, right: after?.right ?? { ...before.right, machine: right.id }, found: [] }
        : newCoupling([], left.id, right.id)
      : undefined
  const machines = removed(document.machines, index)
  const couplings = ordered({ ...document, machines }, [
    ...document.couplings.filter((coupling) => !gone.includes(coupling)),
    ...(joined ? [withoutName(joined)] : []),
  ])
  const skids = document.skids?.map((skid) =>
    skid.carries.includes(machine.id)
      ? { ...skid, carries: skid.carries.filter((id) => id !== machine.id) }
      : skid,
  )
  const surveys = surveysWithout(document, machine.id)
  const names = gone.map((coupling) => draftCouplingName(document, coupling)).join(' and ')
  return {
    document: {
      ...document,
      machines,
      couplings,
      ...(skids && { skids }),
      ...(surveys && { surveys }),
      ...hotChecksWithout(document, machine.id, gone),
    },
    name: `removed ${named(document, index)}${
      names === '' ? '' : ` and the readings of ${names}${joined ? ', now one coupling' : ''}`
    }`,
  }
}

/** Places on a machine that is taken out go with it, and a survey of nothing else; what is left of one no longer counts. */
const surveysWithout = ({ surveys }: TrainDocument, id: string): SurveyDocument[] | undefined =>
  surveys?.flatMap((survey) => {
    const points = survey.points.filter(({ machine }) => machine !== id)
    if (points.length === survey.points.length) return [survey]
    return points.length === 0
      ? []
      : [{ ...survey, points, ...unused('a machine that was surveyed was taken out') }]
  })

/** What was found running of a machine that is taken out, and of its couplings, goes with it. */
const hotChecksWithout = (
  document: TrainDocument,
  id: string,
  gone: readonly CouplingDocument[],
): Pick<TrainDocument, 'hotChecks'> =>
  hotChecksWith(
    document,
    {
      coupling: (one) => (gone.some((coupling) => isOf(one, coupling)) ? undefined : one),
      moved: (one) => (one.machine === id ? undefined : one),
      datum: (datum) => (datum === id ? undefined : datum),
    },
    'a machine that it tells of was taken out',
  )

/** A survey that no longer tells of the train as it is stays in the file and counts for nothing. */
const unused = (why: string): Pick<SurveyDocument, 'use' | 'why'> => ({ use: false, why })

/** A coupling that joins others than before loses the name it was given for the ones before. */
function withoutName(coupling: CouplingDocument): CouplingDocument {
  const { name, ...rest } = coupling
  return name === undefined ? coupling : rest
}

/** A machine at another place of the train. Couplings stay at their places, with all figures, and join the new neighbours. */
export function moveMachine(document: TrainDocument, from: number, to: number): NamedEdit {
  if (!document.machines[from] || !document.machines[to] || from === to)
    return { document, name: '' }
  const machines = moved(document.machines, from, to)
  const couplings = document.couplings.map((coupling) => {
    const at = document.machines.findIndex(({ id }) => id === coupling.left.machine)
    const next = document.machines[at + 1]
    const left = machines[at]
    const right = machines[at + 1]
    if (!left || !right || next?.id !== coupling.right.machine) return coupling
    if (left.id === coupling.left.machine && right.id === coupling.right.machine) return coupling
    return withoutName({
      ...coupling,
      left: { ...coupling.left, machine: left.id },
      right: { ...coupling.right, machine: right.id },
    })
  })
  const surveys = document.surveys?.map((survey) => ({
    ...survey,
    ...unused('the machines stood in another order'),
  }))
  return {
    document: {
      ...document,
      machines,
      couplings,
      ...(surveys && { surveys }),
      ...hotChecksUnused(document, 'the machines stood in another order'),
    },
    name: `moved ${named(document, from)} ${to < from ? 'left' : 'right'} in the train; couplings kept their places and figures`,
  }
}

/** Couplings in train order. */
function ordered(
  { machines }: { readonly machines: readonly MachineDocument[] },
  couplings: readonly CouplingDocument[],
): CouplingDocument[] {
  const at = new Map(machines.map(({ id }, i) => [id, i]))
  const place = (coupling: CouplingDocument) => at.get(coupling.left.machine) ?? machines.length
  return [...couplings].sort((a, b) => place(a) - place(b))
}

const named = (document: TrainDocument, index: number): string =>
  saidBody(machineName(document, index))
