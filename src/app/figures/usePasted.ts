import { computed, shallowRef, type Ref, watch } from 'vue'
import type { PasteTarget } from '../../document/tables/pasted'
import {
  blocksOf,
  placeTables,
  pastedTablesOf,
  type PastedTable,
} from '../../document/tables/pastedTables'
import { useJob } from '../stores/job'
import { cellsOf } from './spreadsheet'

/** The tables of a pasted text, what each of their rows would do, and the document they would make. */
export function usePasted(
  text: Readonly<Ref<string>>,
  own: PasteTarget | undefined,
  read: () => void,
) {
  const job = useJob()
  const tables = shallowRef<readonly PastedTable[]>([])

  watch(text, (now) => {
    const blocks = blocksOf(now).map((block) => ({ line: block.line, cells: cellsOf(block.text) }))
    tables.value = pastedTablesOf(blocks, own)
    read()
  })

  const result = computed(() =>
    job.document ? placeTables(job.document, tables.value, job.units) : undefined,
  )
  const placed = computed(() => result.value?.placed ?? [])
  const rows = computed(() => placed.value.flat())
  const good = computed(() => rows.value.filter(({ does }) => does !== undefined).length)
  /** Rows that do nothing: refused, or of a table of which nobody has said what it is. */
  const left = computed(
    () =>
      rows.value.length -
      good.value +
      tables.value.reduce((sum, { target, cells }) => sum + (target ? 0 : cells.length), 0),
  )

  function replace(index: number, table: PastedTable): void {
    tables.value = tables.value.map((old, i) => (i === index ? table : old))
  }

  return { tables, placed, result, good, left, replace }
}
