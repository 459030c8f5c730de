import { asFound } from '../mechanics/readings/asFound'
import { setName } from '../language/readingSets'
import type { Coupling, Train } from '../mechanics/train'
import { factsOf, type Fact } from './arithmetic'
import type { Block } from './page'
import type { Pencil } from './pencil'

/** More facts than a line needs, or sets that only count together: the best line, and how far each set is off it. */
export function fittedBlocks(train: Train, pencil: Pencil, coupling: Coupling): Block[] {
  const { line } = asFound(coupling)
  const facts = coupling.found.flatMap((set, i) => (set.used ? factsOf(coupling, set, i) : []))
  const value = (fact: Fact) => {
    const [offset, slope] = fact.plane === 'up' ? [line.z, line.sz] : [line.y, line.sy]
    return fact.what === 'offset' ? offset + slope * (fact.x - coupling.mid) : slope
  }
  const text = (fact: Fact, v: number) =>
    fact.what === 'offset' ? pencil.fine(v) : `${pencil.slope(v)} ${pencil.slopeUnit}`
  const words =
    "The readings of this coupling do not give one line by a ruler, so it takes least squares: the planner's line has the smallest sum of squares of what is left over, each weighted by 1/u\u00b2."
  return [
    { kind: 'heading', text: 'The line', aside: 'the right axis against the left one drawn on' },
    {
      kind: 'text',
      look: 'plain',
      text: `${words} In the middle of the coupling the right axis is ${pencil.stands('up', line.z)} (${pencil.fine(line.z)}) and ${pencil.stands('side', line.y)} (${pencil.fine(line.y)}); slope up ${pencil.slope(line.sz)}, to the side ${pencil.slope(line.sy)} ${pencil.slopeUnit}. Each set can be held against it:`,
    },
    {
      kind: 'table',
      columns: [
        { head: 'set', width: 4 },
        { head: 'plane', width: 2 },
        { head: 'the set says', width: 2, align: 'right' },
        { head: 'the line has there', width: 2, align: 'right' },
        { head: 'left over', width: 2, align: 'right' },
      ],
      rows: facts.map((fact) => {
        const set = coupling.found[fact.set]
        return [
          `${set ? setName(train, set, fact.set) : ''}${fact.what === 'offset' ? `, at x ${pencil.length(fact.x)}` : ', slope'}`,
          fact.plane === 'up' ? 'up and down' : 'to the sides',
          text(fact, fact.value),
          text(fact, value(fact)),
          text(fact, fact.value - value(fact)),
        ]
      }),
    },
  ]
}
