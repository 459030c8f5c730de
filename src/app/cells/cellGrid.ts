/**
 * Keys of a table of cells, as on a sheet: arrows walk between cells, typing replaces, Enter or F2
 * edits what stands there and then goes one cell down, Escape takes back what was typed.
 */
type Cell = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement | HTMLButtonElement

const cellsOf = (row: Element): Cell[] => [...row.querySelectorAll<Cell>('[data-cell]')]

const rowsOf = (grid: Element): Element[] =>
  [...grid.querySelectorAll('tr, [data-cell-row]')].filter((row) => cellsOf(row).length > 0)

/** A cell whose text is being edited keeps the arrows for its caret. */
const editing = (cell: Cell): boolean => cell.dataset['editing'] === 'true'

export function editCell(cell: Cell, whether: boolean): void {
  if (whether) cell.dataset['editing'] = 'true'
  else delete cell.dataset['editing']
}

/** Handles a key in a grid; true when it moved or did something, so that nothing else should. */
export function gridKey(event: KeyboardEvent, grid: Element): boolean {
  const cell = event.target
  if (!isCell(cell) || event.ctrlKey || event.metaKey || event.altKey) return false
  const text = cell instanceof HTMLInputElement && cell.type === 'text'
  const long = cell instanceof HTMLTextAreaElement
  switch (event.key) {
    case 'ArrowUp':
      return !(long && editing(cell)) && walk(grid, cell, -1, 0)
    case 'ArrowDown':
      return !(long && editing(cell)) && walk(grid, cell, 1, 0)
    case 'ArrowLeft':
      return !editing(cell) && walk(grid, cell, 0, -1)
    case 'ArrowRight':
      return !editing(cell) && walk(grid, cell, 0, 1)
    case 'F2':
      return text && caret(cell)
    case 'Enter':
      if (cell instanceof HTMLButtonElement || (long && editing(cell))) return false
      if (cell instanceof HTMLSelectElement) {
        cell.showPicker()
        return true
      }
      if (text && !editing(cell) && cell.dataset['typed'] !== 'true') return caret(cell)
      return walk(grid, cell, 1, 0) || leave(cell)
    default:
      return false
  }
}

function caret(cell: HTMLInputElement): boolean {
  editCell(cell, true)
  cell.setSelectionRange(cell.value.length, cell.value.length)
  return true
}

function leave(cell: Cell): boolean {
  editCell(cell, false)
  if (cell instanceof HTMLInputElement) cell.select()
  return true
}

function walk(grid: Element, from: Cell, rows: number, columns: number): boolean {
  const table = rowsOf(grid)
  const r = table.findIndex((row) => cellsOf(row).includes(from))
  const row = table[r]
  if (!row) return false
  const here = cellsOf(row)
  const c = here.indexOf(from)
  if (columns !== 0) {
    const next = here[c + columns] ?? edge(table[r + columns], columns)
    next?.focus()
    return next !== undefined
  }
  const next = below(table[r + rows], from)
  next?.focus()
  return next !== undefined
}

/** The cell of another row that stands nearest above or below. */
function below(row: Element | undefined, from: Cell): Cell | undefined {
  if (!row) return undefined
  const middle = (cell: Cell) => {
    const { left, width } = cell.getBoundingClientRect()
    return left + width / 2
  }
  const want = middle(from)
  return cellsOf(row).sort((a, b) => Math.abs(middle(a) - want) - Math.abs(middle(b) - want))[0]
}

const edge = (row: Element | undefined, columns: number): Cell | undefined =>
  row && cellsOf(row).at(columns > 0 ? 0 : -1)

const isCell = (target: EventTarget | null): target is Cell =>
  target instanceof HTMLElement && target.dataset['cell'] !== undefined
