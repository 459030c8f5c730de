/**
 * Keys of a table of cells, as on a sheet: arrows walk between cells, Home and End along a row, Enter takes
 * what was typed and goes one cell down. What a box with text does by itself stands in `useBox`.
 */
type Cell = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement | HTMLButtonElement

const cellsOf = (row: Element): Cell[] => [...row.querySelectorAll<Cell>('[data-cell]')]

const rowsOf = (grid: Element): Element[] =>
  [...grid.querySelectorAll('tr, [data-cell-row]')].filter((row) => cellsOf(row).length > 0)

/** A cell whose text is being edited keeps the arrows for its caret. */
export const editing = (cell: Cell): boolean => cell.dataset['editing'] === 'true'

/** Something was typed in place of what stood there. */
export const typedOver = (cell: Cell): boolean => cell.dataset['typed'] === 'true'

export function editCell(cell: Cell, whether: boolean): void {
  if (whether) cell.dataset['editing'] = 'true'
  else delete cell.dataset['editing']
}

/** Handles a key in a grid; true when it moved or did something, so that nothing else should. */
export function gridKey(event: KeyboardEvent, grid: Element): boolean {
  const cell = event.target
  if (!isCell(cell) || event.ctrlKey || event.metaKey || event.altKey) return false
  const long = cell instanceof HTMLTextAreaElement
  // an arrow with nowhere to go would change a choice unseen
  const walked = (rows: number, columns: number): boolean =>
    walk(grid, cell, rows, columns) || cell instanceof HTMLSelectElement
  switch (event.key) {
    case 'ArrowUp':
      return !(long && editing(cell)) && walked(-1, 0)
    case 'ArrowDown':
      return !(long && editing(cell)) && walked(1, 0)
    case 'ArrowLeft':
      return !editing(cell) && walked(0, -1)
    case 'ArrowRight':
      return !editing(cell) && walked(0, 1)
    // a list goes to its own first and last with them
    case 'Home':
      return !editing(cell) && !(cell instanceof HTMLSelectElement) && toEnd(grid, cell, 0)
    case 'End':
      return !editing(cell) && !(cell instanceof HTMLSelectElement) && toEnd(grid, cell, -1)
    case 'Enter':
      // the box has begun to edit
      if (event.defaultPrevented) return true
      if (cell instanceof HTMLButtonElement || (long && editing(cell))) return false
      if (cell instanceof HTMLSelectElement) {
        cell.showPicker()
        return true
      }
      return walk(grid, cell, 1, 0) || takeCell(cell)
    default:
      return false
  }
}

/** Takes what was typed in a cell and stays there. */
export function takeCell(cell: HTMLElement): boolean {
  cell.blur()
  cell.focus()
  return true
}

function toEnd(grid: Element, from: Cell, at: 0 | -1): boolean {
  const row = rowsOf(grid).find((one) => cellsOf(one).includes(from))
  const next = row && cellsOf(row).at(at)
  if (next !== from) next?.focus()
  return next !== undefined
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
