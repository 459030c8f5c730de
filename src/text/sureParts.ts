import { unitSign } from '../document/unitSign'
import type { AssumedAnswer, SureAnswer } from '../engine/chance/answer'
import { buySentence, sureSentence } from '../engine/chance/sentence'
import { inUnits } from '../json/inUnits'
import { capital } from '../language/names'
import { chanceText, likeChance } from '../language/chanceText'
import type { Train } from '../mechanics/train'

/** How sure a plan is as people read it, the same in text, on the sheet and on paper. */
export interface SureParts {
  readonly sentence: string
  /** Read again, as found; half and double; bolts. */
  readonly lines: readonly string[]
  /** Couplings and states that are out most often, worst first. */
  readonly weak: readonly {
    readonly coupling: string
    readonly state: string
    readonly chance: string
  }[]
  /** What would add most, best first, and of which plan that is said. */
  readonly buys: readonly string[]
  readonly assumed: readonly AssumedLine[]
}

/** Usual values of one kind in place of those that were left out. */
interface AssumedLine {
  /** Where the first of them would be entered. */
  readonly where: string
  readonly what: string
  /** "10 µm", "10 to 51 µm". */
  readonly value: string
}

/** Most couplings and states, and most of what would add to the chance, that are told. */
const most = 5

export function sureParts(train: Train, sure: SureAnswer): SureParts {
  const { all, reread, asFound, bolts, half, double } = sure
  const buys = (sure.buys ?? [])
    .flatMap((buy) => buySentence(train, buy, sure) ?? [])
    .slice(0, most)
  const lines = [
    ...(all && reread
      ? [
          `Read again afterwards and trimmed until the readings show the plan: ${chanceText(reread)}. As found: ${chanceText(asFound)}.`,
        ]
      : []),
    ...(all && half !== undefined && double !== undefined
      ? [
          `With every uncertainty half as large: ${likeChance(half, all)}; twice as large: ${likeChance(double, all)}.`,
        ]
      : []),
    ...(all && sure.buys?.length && buys.length === 0 && all.chance < 0.98
      ? [
          'Nothing that is unsure, were it known exactly, would by itself add 2 points in a hundred.',
        ]
      : []),
    ...(bolts ? [`That no bolt meets the edge of its hole: ${chanceText(bolts)}.`] : []),
  ]
  return {
    sentence: sureSentence(train, sure),
    lines,
    weak: weakOf(train, sure),
    buys: buys.length > 0 && isMadeAnew(train) ? [...buys, ofThisPlan] : buys,
    assumed: assumedLines(train, sure.assumed ?? []),
  }
}

/** Whether surer values that are entered change the plan itself. */
const isMadeAnew = ({ plan }: Train): boolean => plan.guard > 0 || plan.sure?.chance !== undefined

const ofThisPlan =
  'All this is said of the plan as it stands. Where surer values are entered, it is made anew and may keep less room free: its chance may then rise less.'

function weakOf(train: Train, { couplings, all }: SureAnswer): SureParts['weak'] {
  if (!all) return []
  const name = (id: string) => train.couplings.find((one) => one.id === id)?.name ?? id
  const state = (id: string) => train.states.find((one) => one.id === id)?.name ?? id
  return [...couplings]
    .filter(({ chance }) => chance < 0.995)
    .sort((a, b) => a.chance - b.chance)
    .slice(0, most)
    .map((one) => ({
      coupling: name(one.coupling),
      state: state(one.state),
      chance: likeChance(one.chance, all),
    }))
}

/** One line a kind: its values from the least to the most, and what it stands for. */
function assumedLines(train: Train, assumed: readonly AssumedAnswer[]): AssumedLine[] {
  const kinds = new Map<string, AssumedAnswer[]>()
  for (const one of assumed) kinds.set(one.kind, [...(kinds.get(one.kind) ?? []), one])
  return [...kinds].map(([kind, all]) => {
    const names = [...new Set(all.map(({ of }) => of))].filter((of) => of !== '')
    return {
      where: all[0]?.where ?? '',
      what: capital(names.length === 0 ? kind : `${kind} (${names.join(', ')})`),
      value: valuesText(train, all),
    }
  })
}

function valuesText({ units }: Train, all: readonly AssumedAnswer[]): string {
  const [first] = all
  if (!first) return ''
  if (first.quantity === undefined) return first.value
  const { quantity } = first
  const values = all.flatMap((one) => (one.quantity === undefined ? [] : [one.value]))
  const digits = (value: number) => String(Number(inUnits(value, quantity, units).toPrecision(2)))
  const [low, high] = [digits(Math.min(...values)), digits(Math.max(...values))]
  return `${low === high ? low : `${low} to ${high}`} ${unitSign(quantity, units)}`
}
