import type { SkidDocument, TrainDocument } from '../schema'
import { bodiesAt, freeId, saidBody } from './bodies'
import type { NamedEdit } from './machines'
import { removed, withValue } from '../place'

/** One more skid, which carries nothing yet. */
export function addSkid(document: TrainDocument): NamedEdit {
  const id = freeId(
    bodiesAt(document).map((body) => body.id),
    'skid',
  )
  const skid: SkidDocument = { id, name: '', carries: [], feet: [] }
  return {
    document: { ...document, skids: [...(document.skids ?? []), skid] },
    name: 'added a skid',
  }
}

export function removeSkid(document: TrainDocument, index: number): NamedEdit {
  const skids = document.skids ?? []
  const body = bodiesAt(document).find(({ kind, index: i }) => kind === 'skid' && i === index)
  const left = removed(skids, index)
  return {
    document: withValue(document, ['skids'], left.length === 0 ? undefined : left),
    name: `removed ${saidBody(body?.name ?? 'skid')} and its feet`,
  }
}

/** A machine set on a skid, off any other, or taken off it. */
export function setOnSkid(
  document: TrainDocument,
  skid: number,
  machine: string,
  whether: boolean,
): NamedEdit {
  const body = bodiesAt(document)
  const name = saidBody(body.find(({ id }) => id === machine)?.name ?? machine)
  const under = saidBody(body.find((b) => b.kind === 'skid' && b.index === skid)?.name ?? 'skid')
  const skids = (document.skids ?? []).map((one, i) => {
    const others = one.carries.filter((id) => id !== machine)
    if (whether && i === skid) return { ...one, carries: inOrder(document, [...others, machine]) }
    return others.length === one.carries.length ? one : { ...one, carries: others }
  })
  return {
    document: { ...document, skids },
    name: whether ? `set ${name} on ${under}` : `took ${name} off ${under}`,
  }
}

const inOrder = ({ machines }: TrainDocument, ids: readonly string[]): string[] => [
  ...machines.map(({ id }) => id).filter((id) => ids.includes(id)),
  ...ids.filter((id) => !machines.some((machine) => machine.id === id)),
]
