import { axialShown } from '../scene/axialShown'
import { axialSigns, axialTable, type AxialTable } from '../engine/plan/axialTable'
import { tol } from '../mechanics/tolerances'
import type { Drawn } from './job'
import type { Block, Chapter } from './page'

/** The train along its shafts: a row a number, machine by machine and coupling by coupling from left to right. */
export function axialBlocks({ train, answer }: Drawn): Block[] {
  const axial = axialShown(train, answer)
  if (!axial) return []
  const { members, rows } = axialTable(train, axial)
  return [
    { kind: 'heading', text: 'Along the train', aside: 'from left to right' },
    {
      kind: 'table',
      columns: [
        { head: 'machine, coupling', width: 2.4 },
        { head: 'what', width: 2.4 },
        { head: 'how much', width: 7 },
      ],
      rows: members.flatMap(({ name }, k) => memberRows(name, rows, k)),
    },
    { kind: 'text', look: 'small', text: axialSigns },
  ]
}

/** A row a number, and one a state with all of it: no cell is empty, which would be one to write in. */
function memberRows(name: string, rows: AxialTable['rows'], k: number): string[][] {
  const groups = new Map<string, { head: string; parts: string[] }>()
  for (const { key, group, among, cells } of rows) {
    const said = cells[k] ?? ''
    if (said === '') continue
    // the ids of states tell two of one name apart
    const end = key.lastIndexOf(' ')
    const of = end < 0 ? key : key.slice(0, end + 1)
    const own = groups.get(of) ?? { head: group, parts: [] }
    own.parts.push(among === '' ? said : `${among} ${said}`)
    groups.set(of, own)
  }
  return [...groups.values()].map(({ head, parts }) => [name, head, parts.join('; ')])
}

/** For those who do the work, where a machine moves endwise: before all that is shimmed or slid. */
export function axialPage(job: Drawn): Chapter[] {
  const moved = axialShown(job.train, job.answer)?.machines.some(
    ({ moves }) => moves !== undefined && Math.abs(moves.feet) > tol.unseen,
  )
  const along =
    job.answer.status === 'planned' && job.instructions.some(({ step }) => step.kind === 'axial')
  if (moved !== true || !along) return []
  return [{ section: 'checks', title: 'Along the train', whole: true, blocks: axialBlocks(job) }]
}
