import { axialShown } from '../engine/fieldwork/axialShown'
import { axialSigns, axialTable } from '../engine/plan/axialTable'
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
        { head: 'machine, coupling', width: 3 },
        { head: 'what', width: 2.6 },
        { head: 'how much', width: 6, strong: true },
      ],
      rows: members.flatMap(({ name }, k) =>
        rows
          .filter(({ cells }) => (cells[k] ?? '') !== '')
          .map(({ head, cells }, row) => [row === 0 ? name : '', head, cells[k] ?? '']),
      ),
    },
    { kind: 'text', look: 'small', text: axialSigns },
  ]
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
