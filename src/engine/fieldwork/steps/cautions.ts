import { fineText } from '../../../language/amounts'
import { kilogramsPer, massSign } from '../../../mechanics/units'
import type { Body, Train } from '../../../mechanics/train'
import type { Motion } from '../../../mechanics/motion'
import { footMove } from '../../plan/totals'
import { listed } from '../../../language/names'
import type { FirstEnd } from './ends'
import type { LoadsKnown } from './loads'
import { largestMove, type ActionKind } from './moves'

/**
 * Marks of common practice, no source: site procedure and the makers' drawings govern. In um.
 */
export const practice = {
  /** Least room over a pack through which shims can be slipped, and how far above what it is told a foot may come. */
  leastSlip: 100,
  above: 100,
  /** A move of a machine with restrained points that calls for pipe strain again. */
  piped: 1000,
  /** Room between bolt and hole below which it is measured first. */
  room: 300,
  /** What a foot may follow as bolts are tightened, and what a neighbour may be bumped. */
  follows: 20,
} as const

/** What can hurt at the first step of all, once. */
export const beforeAll =
  'Isolated, tagged, tried to start, own lock on, nothing under pressure that can still move? Site procedures govern.'

/** Where a machine is on its jacks. */
export const liftCaution =
  'Lift no higher than the jacking says. A block beside each jack, no hand between foot and base; slip shims with a tool.'

/** Where a rotor in pedestal bearings goes up or down within its stator. */
const pedestalCaution =
  'The rotor moves within its stator: no hand and no tool in the air gap. Where a pedestal is insulated nothing of metal may bridge that, and it is measured before the run.'

/** How a gear is turned while one reads: its journals lie to another side when it is turned back. */
export const turnGear =
  'Turn a gear only in the direction in which it is loaded, so that its journals lie alike at every reading.'

/** Cautions of one move, where the act is. */
export function moveCautions(
  train: Train,
  body: Body,
  kind: ActionKind,
  piece: Motion,
  after: Motion,
  first: FirstEnd,
  known: LoadsKnown,
): string[] {
  const { units } = train
  const out: string[] = []
  if (kind === 'vertical') {
    out.push(liftCaution, loadCaution(train, known))
    if (body.stator) out.push(pedestalCaution)
  }
  if (kind === 'lateral')
    out.push('Fingers out of bolt holes and couplings. Back the jackscrews off after the slide.')
  if (kind === 'axial')
    out.push('Spacers out before anything moves along the train; nobody between the shaft ends.')
  if (first === 'together' && kind !== 'axial' && body.rows.length > 1)
    out.push('One end ahead of the other would pass a limit: move both ends in step.')
  const tight = kind === 'vertical' ? undefined : tightestRoom(body, after)
  if (tight && tight.room < practice.room)
    out.push(
      `Only ${fineText(Math.max(0, tight.room), units)} is left between bolt and hole at foot ${tight.foot}: measure it before the move.`,
    )
  if (body.restraints.length > 0 && largestMove(body, piece) > practice.piped)
    out.push('Its piping goes with it: prove pipe strain again, flange by flange.')
  return out
}

function loadCaution(train: Train, known: LoadsKnown): string {
  if ('missing' in known)
    return known.missing.length === 0
      ? 'No feet entered: loads at the jacks are not known.'
      : `Mass of ${listed(known.missing)} not entered: weigh or ask before lifting, loads at the jacks are not known.`
  const mass = (value: number) =>
    `${Math.ceil(value / kilogramsPer[train.units.length])} ${massSign[train.units.length]}`
  const { jack, rating, over, assumed } = known.loads
  const lead = over ? 'STOP: ' : ''
  const rated =
    rating === undefined
      ? 'jack rating not entered'
      : `${over ? 'more than' : 'within'} its rating of ${Math.floor(rating / kilogramsPer[train.units.length])} ${massSign[train.units.length]}`
  return `${lead}Up to ${mass(jack)} on one jack, ${rated} (${assumed}).`
}

function tightestRoom(body: Body, after: Motion) {
  return body.feet
    .flatMap((foot) => {
      if (!foot.hole) return []
      const { axial, side } = footMove(body, after, foot)
      const off = Math.hypot(foot.hole.x + axial, foot.hole.y + side)
      return [{ foot: foot.id, room: foot.hole.clearance / 2 - off }]
    })
    .reduce<{ foot: string; room: number } | undefined>(
      (a, b) => (a && a.room <= b.room ? a : b),
      undefined,
    )
}
