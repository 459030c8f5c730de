import { removed, valueAt, withList, withValue, type Path } from '../place'
import type { HotCheckDocument, TrainDocument } from '../schema'
import { couplingTitleOf } from '../titles'
import type { NamedEdit } from './machines'
import { readingPresets, type DraftSet } from './readingPresets'
import { readAgain } from './repeats'
import { idFrom } from './stateEdits'

/** A time of a hot check as it is begun: how long after the stop is asked for. */
interface DraftTime {
  readonly after?: number
  readonly found: readonly DraftSet[]
}

/** What a hot check is called: its name, or its number from the top. */
export const hotCheckTitle = (check: HotCheckDocument | undefined, index: number): string =>
  check?.name ?? `hot check ${index + 1}`

/** A hot check more, of the last state; it counts for nothing until it is used, so that the plan stays while somebody types. */
export function addHotCheck(document: TrainDocument): NamedEdit {
  const checks = document.hotChecks ?? []
  const state = document.states?.at(-1)?.id
  if (state === undefined) return { document, name: '' }
  const taken = checks.map((check) => check.id)
  const id = idFrom(`hot check ${checks.length + 1}`, taken, 'hot-check')
  return {
    document: { ...document, hotChecks: [...checks, { id, state, use: false }] },
    name: 'added a hot check',
  }
}

export function removeHotCheck(document: TrainDocument, index: number): NamedEdit {
  const checks = document.hotChecks ?? []
  const left = removed(checks, index)
  return {
    document: withValue(document, ['hotChecks'], left.length === 0 ? undefined : left),
    name: `removed ${hotCheckTitle(checks[index], index)}`,
  }
}

/** A coupling that was read after the stop, with a first time: the dials of its readings cold, nothing read yet. */
export function addHotCoupling(
  document: TrainDocument,
  check: number,
  coupling: number,
): NamedEdit {
  const joint = document.couplings[coupling]
  if (!joint) return { document, name: '' }
  const cold = (joint.found as readonly DraftSet[]).filter((set) => set['use'] !== false)
  const found = cold.length > 0 ? cold.map(readAgain) : (readingPresets[0]?.sets(joint) ?? [])
  return {
    document: withList(document, ['hotChecks', check, 'couplings'], (list) => [
      ...list,
      { coupling: joint.id, times: [{ found }] },
    ]),
    name: `added ${couplingTitleOf(document, coupling)} to ${titleAt(document, check)}`,
  }
}

/** A time more: the dials of the one before, nothing read yet. */
export function addTime(document: TrainDocument, check: number, c: number): NamedEdit {
  return {
    document: withList(document, ['hotChecks', check, 'couplings', c, 'times'], (list) => {
      const before = list.at(-1) as DraftTime | undefined
      return [...list, { found: (before?.found ?? []).map(readAgain) }]
    }),
    name: `added a time to ${titleAt(document, check)}`,
  }
}

/** A check without a time; with the last of its times a coupling goes. */
export function removeTime(
  document: TrainDocument,
  check: number,
  c: number,
  t: number,
): NamedEdit {
  const place = ['hotChecks', check, 'couplings', c]
  const times = (valueAt(document, [...place, 'times']) ?? []) as readonly unknown[]
  return times.length === 1
    ? removeEntry(document, check, 'couplings', c)
    : {
        document: withValue(document, [...place, 'times'], removed(times, t)),
        name: `removed time ${t + 1} of ${titleAt(document, check)}`,
      }
}

/** A machine that was measured as moved, with a place at its first foot and at its last. */
export function addMoved(document: TrainDocument, check: number, machine: string): NamedEdit {
  const feet = document.machines.find(({ id }) => id === machine)?.feet ?? []
  const xs = feet.map(({ x }) => x).filter((x) => Number.isFinite(x))
  const ends = xs.length === 0 ? [] : [...new Set([Math.min(...xs), Math.max(...xs)])]
  const points = ends.length === 0 ? [{}] : ends.map((at) => ({ at }))
  return {
    document: withList(document, ['hotChecks', check, 'moved'], (list) => [
      ...list,
      { machine, points },
    ]),
    name: `added a machine measured as moved to ${titleAt(document, check)}`,
  }
}

/** A place more of a machine that was measured as moved; where it lies is asked for. */
export const addMovedPoint = (document: TrainDocument, check: number, m: number): NamedEdit => ({
  document: withList(document, ['hotChecks', check, 'moved', m, 'points'], (list) => [...list, {}]),
  name: `added a place to ${titleAt(document, check)}`,
})

/** A check without a place of a machine; with its last place the machine goes. */
export function removeMovedPoint(
  document: TrainDocument,
  check: number,
  m: number,
  p: number,
): NamedEdit {
  const place = ['hotChecks', check, 'moved', m, 'points']
  const points = (valueAt(document, place) ?? []) as readonly unknown[]
  return points.length === 1
    ? removeEntry(document, check, 'moved', m)
    : {
        document: withValue(document, place, removed(points, p)),
        name: `removed place ${p + 1} of ${titleAt(document, check)}`,
      }
}

/** A check without a coupling, or without a machine, that it names. */
export function removeEntry(
  document: TrainDocument,
  check: number,
  list: 'couplings' | 'moved',
  index: number,
): NamedEdit {
  const place: Path = ['hotChecks', check, list]
  const left = removed((valueAt(document, place) ?? []) as readonly unknown[], index)
  return {
    document: withValue(document, place, left.length === 0 ? undefined : left),
    name: `removed ${list === 'couplings' ? 'a coupling' : 'a machine'} from ${titleAt(document, check)}`,
  }
}

const titleAt = ({ hotChecks }: TrainDocument, check: number): string =>
  hotCheckTitle(hotChecks?.[check], check)
