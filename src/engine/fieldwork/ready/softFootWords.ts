import { tol } from '../../../mechanics/tolerances'
import { fineText, slopeText, underDigits } from '../../../language/amounts'
import type { Body, Coupling, Train } from '../../../mechanics/train'
import type { Misalignment } from '../../../mechanics/readings/equation'
import { showsNought, towardSide } from '../../../language/sides'
import { inSentence, listed } from '../../../language/names'
import type { FootGapAnswer, SoftFootAnswer } from './answer'
import type { FootGap, Taper } from './footGap'
import { baseWords } from './base'
import { settledBy } from './settled'
import type { SoftFoot } from './softFoot'

/** A soft body as a step of its own: what goes under which foot, what that moves, and where to stop. */
export function softFootAnswer(train: Train, index: number, soft: SoftFoot): SoftFootAnswer {
  const body = train.bodies[index]
  if (!body) throw new RangeError(`no body ${index}`)
  const { couplings } = settledBy(train, index, soft.shims ?? [])
  const moves = couplings.flatMap(({ coupling: id, by }) => {
    const coupling = train.couplings.find((one) => one.id === id)
    if (!coupling) return []
    const offset = { y: by.y, z: by.z }
    const slope = { y: by.sy, z: by.sz }
    const words = movedWords(train, coupling, by)
    return [{ coupling: id, offset, slope, words }]
  })
  return {
    body: soft.body,
    limit: soft.limit.value,
    source: soft.limit.source,
    feet: soft.feet.map((foot) => footAnswer(train, body, foot, soft.limit.value)),
    ...(soft.shims && {
      shims: soft.shims.map(({ foot, shim, exact }) => ({ foot, shim, exact })),
      total: soft.shims.reduce((sum, { shim }) => sum + shim, 0),
    }),
    ...(soft.leaves !== undefined && { leaves: soft.leaves }),
    unexplained: soft.unexplained,
    ...(soft.why !== undefined && { why: soft.why }),
    moves,
    words: stepWords(train, body, soft),
    hold: holdWords(train, body, moves),
  }
}

function footAnswer(train: Train, body: Body, foot: FootGap, limit: number): FootGapAnswer {
  return {
    foot: foot.foot,
    rise: foot.rise,
    gap: foot.gap,
    kinds: [...foot.kinds],
    words: footWords(train, body, foot, limit),
  }
}

/** "Motor foot 1 left rises 0.12 mm (0.05 mm is allowed): angled, ...". */
function footWords(train: Train, body: Body, foot: FootGap, limit: number): string {
  const text = (value: number) => fineText(value, train.units)
  const seen = `${body.name} foot ${foot.foot} rises ${text(foot.rise)} (${text(limit)} is allowed)`
  const kinds = foot.kinds.map((kind) => {
    switch (kind) {
      case 'parallel':
        return `parallel: ${text(foot.gap)} of air under all of it`
      case 'angled':
        return `angled: ${foot.taper ? taperWords(train, foot.taper) : ''}`
      case 'springing':
        return `springing: it rises ${text(foot.springs)} more than the widest gap under it, so shims do not take that away; look for too many or bent plates, dirt, rust or paint between them, a base that gives, a pipe that pulls`
      case 'uneven':
        return 'uneven: its corners lie on no one plane; look for a burr, dirt or a bent foot before shimming'
    }
  })
  return [seen, ...kinds].join('; ')
}

/** Where the wedge of air opens to, and how a stepped shim must lie in it. */
function taperWords(train: Train, { toRight, toThree }: Taper): string {
  const text = (value: number) => fineText(Math.abs(value), train.units)
  const ways = [
    ...(showsIn(toRight, toThree)
      ? [`${text(toRight)} toward its ${toRight > 0 ? 'right' : 'left'} end`]
      : []),
    ...(showsIn(toThree, toRight) ? [`${text(toThree)} ${towardSide(train, toThree)}`] : []),
  ]
  return `the gap opens by ${listed(ways)}; what lies under it is tapered or stepped by as much, thick side there, or the foot is machined; the bolt must not pull it down`
}

/** A way is named unless it is lost beside the other. */
const showsIn = (way: number, other: number) => Math.abs(way) >= 0.2 * Math.abs(other) && way !== 0

function stepWords(train: Train, body: Body, soft: SoftFoot): string[] {
  const text = (value: number) => fineText(value, train.units)
  const added = (soft.shims ?? []).filter(({ shim }) => shim > 0)
  const contradicts =
    soft.unexplained > 25.4
      ? [
          `The gaps of ${body.name} contradict a stiff frame on one plane by up to ${text(soft.unexplained)}: something springs, or a foot was read with another one loose.`,
        ]
      : []
  // a plane takes three heights away: as many feet as there are more of must stand off to settle the rest
  const off = soft.feet.filter(({ gap }) => gap > tol.flatFoot).length
  const open =
    off < body.feet.length - 3
      ? [
          `On ${body.feet.length} feet these gaps alone leave the shape open: other heights of the feet show the same gaps, and the shims are for those that depart least from one plane. Prove every foot again after them, or level the pads first.`,
        ]
      : []
  const base = baseWords(train, body)
  if (added.length === 0)
    return [
      `${body.name}: ${soft.why ?? 'nothing is to be added'}.`,
      ...open,
      ...contradicts,
      ...base,
    ]
  const total = added.reduce((sum, { shim }) => sum + shim, 0)
  const least = open.length === 0 ? ' is the least that makes its feet plane' : ''
  return [
    `${body.name}: put in ${listed(added.map(({ foot, shim }) => `${text(shim)} under foot ${foot}`))}; ${text(total)} in all${least}.`,
    ...open,
    ...(soft.leaves !== undefined && soft.leaves > 0.5
      ? [`Up to ${text(soft.leaves)} should then be left at a foot.`]
      : []),
    ...contradicts,
    ...base,
  ]
}

/** "the gear against the motor, at mid-span of motor to gear: 32 um up, 0.05 mrad more rising to the right". */
function movedWords(train: Train, coupling: Coupling, { y, z, sy, sz }: Misalignment): string {
  const name = (machine: number) => inSentence(train.machines[machine]?.name ?? '')
  const size = (value: number) => fineText(Math.abs(value), train.units)
  const turn = (value: number) => slopeText(Math.abs(value), train.units)
  const turns = (value: number) => /[1-9]/.test(value.toFixed(2))
  const parts = [
    ...(showsNought(z, train) ? [] : [`${size(z)} ${z > 0 ? 'up' : 'down'}`]),
    ...(showsNought(y, train) ? [] : [`${size(y)} ${towardSide(train, y)}`]),
    ...(turns(sz) ? [`${turn(sz)} more ${sz > 0 ? 'rising' : 'falling'} to the right`] : []),
    ...(turns(sy) ? [`${turn(sy)} more running ${towardSide(train, sy)} to the right`] : []),
  ]
  const by =
    parts.length === 0
      ? `${underDigits(train.units)} and under ${slopeText(0.01, train.units)}`
      : parts.join(', ')
  return `${name(coupling.right)} against ${name(coupling.left)}, at mid-span of ${coupling.name}: ${by}`
}

function holdWords(train: Train, body: Body, moves: readonly { coupling: string }[]): string {
  const felt = train.couplings.filter(({ id }) => moves.some(({ coupling }) => coupling === id))
  const which =
    felt.length === 0 ? 'the couplings of this machine' : listed(felt.map(({ name }) => name))
  return `Stop point: loosen each bolt of ${inSentence(body.name)} again, one at a time, and prove its feet; then read ${which} anew. Nothing else is moved before that.`
}
