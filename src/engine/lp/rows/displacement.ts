import type { Affine } from '../affine'
import type { Frame } from '../frame'
import type { Column, Meaning, Row } from '../program'

/**
 * What is paid for: every shim change, every slide of a row of feet, every axial move, each split
 * into two moves of opposite way so that the least cost is their sum. A move that costs nothing is
 * not split.
 * @returns columns and rows in program units; costs in program units for each
 */
export function displacements(frame: Frame): { columns: Column[]; rows: Row[] } {
  const columns: Column[] = []
  const rows: Row[] = []
  const split = (
    body: number,
    name: string,
    ways: readonly [up: string, down: string],
    moved: Affine,
    cost: number,
    meaning: Meaning,
  ): void => {
    if (cost === 0 || moved.terms.size === 0) return
    const first = frame.columns.length + columns.length
    for (const way of ways)
      columns.push({
        name: `${way} ${name}`,
        lower: 0,
        upper: Infinity,
        cost,
        meaning: { part: 'move', body, way },
      })
    rows.push({
      name: `${meaning.fact} ${name}`,
      terms: [...moved.terms, [first, -1], [first + 1, 1]],
      lower: 0,
      upper: 0,
      meaning,
    })
  }
  const { weights } = frame.train.plan
  frame.train.bodies.forEach((body, b) => {
    const cost = (weight: number) => weight * body.weight
    body.feet.forEach((foot, f) => {
      const dz = frame.displacement(b, { x: foot.x, y: foot.y, z: 0 }, 'dz', 'own')
      split(b, `${body.id} ${foot.id}`, ['add', 'remove'], dz, cost(weights.shim), {
        fact: 'shim',
        body: b,
        foot: f,
      })
    })
    body.rows.forEach((row, r) => {
      const dy = frame.displacement(b, { x: row.x, y: 0, z: 0 }, 'dy', 'own')
      split(b, `${body.id} row ${r + 1}`, ['to 3', 'to 9'], dy, cost(weights.side), {
        fact: 'slide',
        body: b,
        row: r,
      })
    })
    const dx = frame.displacement(b, { x: body.x0, y: 0, z: 0 }, 'dx', 'own')
    split(b, body.id, ['right', 'left'], dx, cost(weights.axial), { fact: 'axial', body: b })
  })
  return { columns, rows }
}
