import { tol } from '../mechanics/tolerances'
import {
  fineDigits,
  lengthDigits,
  shareText,
  slopeDigits,
  slopeText,
  toldDigits,
} from '../language/amounts'
import { fineSign, slopeSign } from '../mechanics/units'
import { isAxial } from '../mechanics/axial'
import { isEngaged, judgedStates } from '../mechanics/engaged'
import type { Coupling, Train } from '../mechanics/train'
import type { CheckAnswer, CouplingAnswer } from '../engine/plan/answer'
import { verdictWord } from '../engine/plan/verdictWord'
import { meshSaid, teethAsked } from '../engine/plan/teethWords'
import { axialWay } from '../engine/plan/couplingWords'
import { coupledSaid } from '../engine/plan/coupledWords'
import { hasMoves } from '../engine/plan/moves'
import type { DrawnAnswer } from './drawnAnswer'
import { inSentence } from '../language/names'
import type { Figures } from './figures'
import { sideName } from '../language/sides'

/** What one coupling's card says: a row a state. */
export interface CouplingFacts {
  readonly coupling: number
  readonly name: string
  readonly limits: string
  readonly basis?: string
  /** States in which it is engaged. */
  readonly rows: readonly StateRow[]
  /** States in which its clutch is open: nothing is judged there. */
  readonly apart: readonly { readonly state: number; readonly name: string }[]
  /** What is wanted of it and why, and how far its halves run out. */
  readonly coupled?: readonly string[]
  /** How its teeth run, of a gear coupling: what is asked of them, then a sentence a mesh and state. */
  readonly teeth?: { readonly asked: string; readonly meshes: readonly ToothLine[] }
}

interface ToothLine {
  readonly words: string
  /** Other than asked, after the plan or, without one, as found. */
  readonly off: boolean
}

interface StateRow {
  readonly state: number
  readonly name: string
  /** After the plan; absent where there is none. */
  readonly after?: Use
  readonly asFound: Use
  /** True where what was found is worth saying beside the plan: it differs in the digits. */
  readonly moved: boolean
  /** True where this row stands on the share that the plan may use. */
  readonly binds: boolean
}

/** How much of a tolerance is used, and by what. */
export interface Use {
  readonly share: number
  readonly percent: string
  readonly over: boolean
  /** "0.35 of 0.50 mrad at the left plane". */
  readonly value: string
  /** "gear low, toward the crane bay". */
  readonly which: string
  /** "shown to be in"; empty where nothing is kept free of the limits. */
  readonly shown: string
}

/** A component smaller than this part of the whole is not worth a word. */
const worthAWord = 0.2

/** Every coupling in train order; without a plan the rows carry what was found alone. */
export function couplingFacts(
  train: Train,
  answer: DrawnAnswer,
  figures: Figures,
): CouplingFacts[] {
  const couplings = hasMoves(answer) ? answer.couplings : []
  return train.couplings.map((coupling, c) => ({
    coupling: c,
    name: coupling.name,
    limits: couplingLimitsText(train, coupling),
    ...(coupling.tolerance.basis !== undefined && { basis: coupling.tolerance.basis }),
    ...(coupledSaid(train, coupling).length > 0 && { coupled: coupledSaid(train, coupling) }),
    ...teethFacts(train, coupling, answer),
    apart: train.states.flatMap(({ id, name }, state) =>
      isEngaged(coupling, id) ? [] : [{ state, name }],
    ),
    rows: judgedStates(train, coupling).map(({ state, s }): StateRow => {
      const told = couplings.find((a) => a.coupling === coupling.id && a.state === state.id)
      const was = figures.asFound.find((a) => a.coupling === coupling.id && a.state === state.id)
      if (!was) throw new RangeError(`no share of ${coupling.id} in ${state.id}`)
      const after = told && useOf(train, coupling, told)
      const asFound = useOf(train, coupling, was)
      return {
        state: s,
        name: state.name,
        ...(after && { after }),
        asFound,
        moved: !after || after.percent !== asFound.percent || after.value !== asFound.value,
        binds: after !== undefined && after.share >= answer.share - tol.onShare,
      }
    }),
  }))
}

function teethFacts(
  train: Train,
  { id }: Coupling,
  { teeth = [] }: Pick<DrawnAnswer, 'teeth'>,
): Pick<CouplingFacts, 'teeth'> {
  const own = teeth.filter(({ coupling }) => coupling === id)
  if (own.length === 0) return {}
  const meshes = own.map((mesh): ToothLine => {
    const now = mesh.planned ?? mesh.asFound
    const off = now.tooStraight === true || now.tooFast === true
    return { words: meshSaid(train, mesh), off }
  })
  return { teeth: { asked: teethAsked(train, id), meshes } }
}

/** What a coupling may be off, in words: "0.50 mrad at each plane". */
export function couplingLimitsText(train: Train, { tolerance, axial }: Coupling): string {
  const { flex, offset, angle, shape } = tolerance
  const parts = [
    ...(flex === undefined ? [] : [`${slopeText(flex, train.units)} at each plane`]),
    ...(offset === undefined
      ? []
      : [`${fineDigits(offset, train.units)} ${fineSign[train.units.fine]} offset`]),
    ...(angle === undefined ? [] : [`${slopeText(angle, train.units)} angle`]),
  ]
  return `${parts.join(', ')}${shape === 'box' ? ', each way apart' : ''}${axial ? '; shaft gap' : ''}`
}

function useOf(
  train: Train,
  coupling: Coupling,
  { share, checks }: Pick<CouplingAnswer, 'share' | 'checks'>,
): Use {
  const worst = checks.reduce<CheckAnswer | undefined>(
    (a, b) => (a && a.share >= b.share ? a : b),
    undefined,
  )
  if (!worst) throw new RangeError(`coupling ${coupling.id} has no limit`)
  return {
    share,
    percent: shareText(share),
    over: share > 1 + tol.share,
    value: valueText(train, coupling, worst),
    which: whichWay(train, coupling, worst),
    shown: verdictWord(checks),
  }
}

function valueText(train: Train, coupling: Coupling, check: CheckAnswer): string {
  const { x = 0, y = 0, z = 0 } = check
  const size = isAxial(check.what)
    ? Math.abs(x)
    : coupling.tolerance.shape === 'round'
      ? Math.hypot(y, z)
      : Math.max(Math.abs(y), Math.abs(z))
  const [digits, unit] = digitsOf(train, check)
  return `${digits(size)} of ${digits(check.limit)} ${unit}${placeWords[check.what]}`
}

const placeWords = {
  'left plane': ' at the left plane',
  'right plane': ' at the right plane',
  offset: ' offset',
  angle: ' between the shafts',
  gap: ' of shaft gap',
  stretch: ' of coupling stretch',
  float: ' of rotor float',
} as const

function digitsOf(train: Train, { what }: CheckAnswer): [(value: number) => string, string] {
  const { units } = train
  if (what === 'offset') return [(v) => toldDigits(v, units), fineSign[units.fine]]
  if (isAxial(what)) return [(v) => lengthDigits(v, units), units.length]
  return [slopeDigits, slopeSign(units)]
}

/**
 * Which way, in words. At a flex plane it is where the other machine's shaft stands; offset is the
 * right machine's; an angle opens the gap between the faces on the side away from the slope.
 */
function whichWay(train: Train, coupling: Coupling, check: CheckAnswer): string {
  const { x = 0, y = 0, z = 0, what } = check
  if (isAxial(what)) return axialWay(what, x)
  const size = Math.hypot(y, z)
  if (size === 0) return 'in line'
  const [upright, sideways] = [Math.abs(z) >= worthAWord * size, Math.abs(y) >= worthAWord * size]
  if (what === 'angle')
    return `open ${[
      ...(upright ? [z > 0 ? 'at the bottom' : 'at the top'] : []),
      ...(sideways ? [sideName(train, -y)] : []),
    ].join(' and ')}`
  const machine = train.machines[what === 'right plane' ? coupling.left : coupling.right]
  return [
    inSentence(machine?.name ?? ''),
    [...(upright ? [z > 0 ? 'high' : 'low'] : []), ...(sideways ? [sideName(train, y)] : [])].join(
      ', ',
    ),
  ].join(' ')
}
