import { stepsAtFoot } from '../engine/fieldwork/steps/instructions'
import { footFacts } from '../scene/footFacts'
import { fineText } from '../language/amounts'
import { towardSide } from '../language/sides'
import type { Drawn } from './job'
import type { Block } from './page'
import { movedBodies } from './words'

/** Every foot that is worked on, a line each: what to do there, what is left afterwards, in which steps. */
export function footTable(job: Drawn): Block[] {
  const { train, answer, instructions } = job
  if (answer.status !== 'planned') return []
  const moved = movedBodies(train, answer)
  const rows = footFacts(train, answer).flatMap(
    ({ body, foot, name, shim, slide, pack, hole, bound }) => {
      const of = train.bodies[body]
      if (!of || !moved.includes(of)) return []
      const side = answer.feet.find((one) => one.body === of.id && one.foot === name)?.side ?? 0
      const left = [
        hole ? `${hole.room.digits} ${hole.room.unit}` : 'not entered',
        ...(pack ? [fineText(pack.after, train.units)] : []),
        ...bound,
      ]
      return [
        [
          foot === 0 ? of.name : ' ',
          name,
          shim?.amount ? `${shim.word} ${shim.amount.digits} ${shim.amount.unit}` : 'pack stays',
          slide?.amount
            ? `${slide.amount.digits} ${slide.amount.unit} ${towardSide(train, side)}`
            : 'no slide',
          left.join('; '),
          stepsAtFoot(instructions, of.id, name)
            .map(({ number }) => String(number))
            .join(', ') || ' ',
        ],
      ]
    },
  )
  if (rows.length === 0) return []
  return [
    { kind: 'heading', text: 'Every foot', aside: 'fixed machines are not touched' },
    {
      kind: 'table',
      columns: [
        { head: 'machine', width: 2.6 },
        { head: 'foot', width: 1.7 },
        { head: 'shims', width: 2.7 },
        { head: 'slide', width: 5 },
        { head: 'left at the bolt, and pack', width: 3.6 },
        { head: 'steps', width: 1.2 },
      ],
      rows,
    },
  ]
}
