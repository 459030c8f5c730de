import { computed, nextTick, type ComputedRef, type Ref } from 'vue'
import { bodiesAt, saidBody, type BodyAt } from '../../document/edits/bodies'
import {
  addToBody,
  bodyListPath,
  mayHave,
  removeFromBody,
  type BodyList,
} from '../../document/edits/bodyLists'
import { valueAt, type Path } from '../../document/place'
import { useJob } from '../stores/job'
import { useChanges } from './useChanges'

/** One thing on a body. */
interface BodyRow {
  readonly body: BodyAt
  readonly index: number
  readonly key: string
  readonly path: Path
  readonly id: string
  /** "point nozzle1 of the pump". */
  readonly label: string
}

interface BodyRows {
  readonly bodies: ComputedRef<BodyAt[]>
  readonly rows: ComputedRef<BodyRow[]>
  /** Adds one and goes to its first cell. */
  readonly add: (body: BodyAt) => Promise<void>
  readonly remove: (row: BodyRow) => void
}

/**
 * A table of things that stand on bodies, a row each in the order of the bodies.
 * @param room where the table is drawn
 * @param said one of them by its id
 */
export function useBodyList(
  list: BodyList,
  room: Ref<HTMLElement | null>,
  said: (id: string) => string,
): BodyRows {
  const job = useJob()
  const apply = useChanges()
  const bodies = computed(() =>
    job.document ? bodiesAt(job.document).filter((body) => mayHave(body, list)) : [],
  )
  const rows = computed(() =>
    bodies.value.flatMap((body) => {
      const path = bodyListPath(body, list)
      const all = (valueAt(job.document, path) ?? []) as readonly { readonly id: string }[]
      return all.map(({ id }, index): BodyRow => ({
        body,
        index,
        key: `${body.id} ${index}`,
        path: [...path, index],
        id,
        label: `${said(id)} of ${saidBody(body.name)}`,
      }))
    }),
  )
  const add = async (on: BodyAt): Promise<void> => {
    const taken = rows.value.filter(({ body }) => body.id === on.id).map(({ id }) => id)
    apply((now) => addToBody(now, on, list, taken))
    await nextTick()
    const index = rows.value.findLastIndex(({ body }) => body.id === on.id)
    const row = room.value?.querySelectorAll('tbody tr')[index]
    row?.querySelector<HTMLElement>('input')?.focus()
  }
  const remove = ({ body, index }: BodyRow): void => {
    apply((now) => removeFromBody(now, body, list, index))
  }
  return { bodies, rows, add, remove }
}
