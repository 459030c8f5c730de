import { fineText, signedText } from '../../../language/amounts'
import { capital } from '../../../language/names'
import { packText, shimText } from '../../../language/recipes'
import { tidy } from '../../../language/tidy'
import { showsNought, towardSide } from '../../../language/sides'
import type { Body, Train } from '../../../mechanics/train'
import type { Micrometres } from '../../../mechanics/units'
import type { StepAnswer, StepFootAnswer, StepKind, StepsAnswer } from './answer'
import { dialLines } from './dialWords'
import { inEndOrder } from './ends'
import { expectedAfter, expectedLine, type ExpectedCoupling } from './expectedWords'
import { poseLines } from './poseAnswers'
import { recipeBeside } from './recipe'

/** One step of the work as every face tells it: sheet, cards beside the machine, paper and text. */
export interface Instruction {
  /** From 1, in the order of work. */
  readonly number: number
  readonly id: string
  readonly kind: StepKind
  /** Id of its body, and what the body is called. */
  readonly body: string
  readonly name: string
  /** One sentence that says what to do. */
  readonly words: string
  /** The same in two or three words: "shims", "slide". */
  readonly short: string
  /** What to do at each foot, in the order in which the step moves them. */
  readonly feet: readonly FootInstruction[]
  /** How the body is lifted, pose by pose, a line each; nothing of a step that lifts none. */
  readonly lifts: readonly string[]
  /** Dials to set up, a line each, and what they should show at the end. */
  readonly dials: readonly string[]
  /** What the couplings should show where one then stops to read, and the same a line each. */
  readonly expected: readonly ExpectedCoupling[]
  readonly readings: readonly string[]
  /** What must be seen and agreed before the next step. */
  readonly stop?: string
  /** What is opened and loosened before it. */
  readonly before: readonly string[]
  readonly cautions: readonly string[]
  /** Limits passed on the way, with what would keep them. */
  readonly breaks: readonly string[]
  /** True where soft feet are to be seen to first: its figures will change. */
  readonly provisional: boolean
  /** The step as it was worked out. */
  readonly step: StepAnswer
}

type FootWay = 'shim' | 'side' | 'axial'

export interface FootInstruction {
  readonly foot: string
  readonly way: FootWay
  /** + is up, toward 3 o'clock, to the right. */
  readonly amount: Micrometres
  /** "put in 0.35 mm", "slide 0.20 mm toward the lake", "pack stays". */
  readonly act: string
  /** False where it has nothing to do, as far as the digits show. */
  readonly moves: boolean
  /** "lifted to +1.35 mm on the way, no higher", of a step that lifts it. */
  readonly lift?: string
  /** "pack 3.00 mm, then 3.35 mm", of a step that shims. */
  readonly pack?: string
  /** In plates of the store, where that says more than the act. */
  readonly recipe?: string
  readonly answer: StepFootAnswer
}

/** The order of work as instructions, numbered once for every face. */
export function instructionsOf(train: Train, { steps }: Pick<StepsAnswer, 'steps'>): Instruction[] {
  return steps.map((step, i) => {
    const body = train.bodies.find(({ id }) => id === step.body)
    const first = step.stops?.first ?? 'left'
    const ordered = <Entry extends { readonly foot?: string }>(entries: readonly Entry[]) =>
      body ? inEndOrder(body, entries, first) : [...entries]
    const expected = expectedAfter(train, step)
    return {
      number: i + 1,
      id: step.id,
      kind: step.kind,
      body: step.body,
      name: body?.name ?? step.body,
      words: step.words,
      short: shorts[step.kind],
      feet: ordered(step.feet).map((foot) => footInstruction(train, body, step, foot)),
      lifts: step.feet.some(({ lift = 0 }) => lift > 0) ? poseLines(step.poses) : [],
      dials: dialLines(train, ordered(step.dials)),
      expected,
      readings: expected.map((entry) => expectedLine(train, entry)),
      ...(step.hold !== undefined && { stop: sentence(withoutLead(step.hold)) }),
      before: step.before.map(sentence),
      cautions: step.cautions.map(sentence),
      breaks: step.breaks.map(({ words, instead }) => `LIMIT PASSED: ${words} ${instead}`),
      provisional: step.provisional,
      step,
    }
  })
}

const shorts: Record<StepKind, string> = {
  'soft foot': 'soft feet shimmed',
  axial: 'moved along the train',
  vertical: 'shims',
  lateral: 'slide',
  read: 'bolts tight, read again',
}

function footInstruction(
  train: Train,
  body: Body | undefined,
  step: StepAnswer,
  answer: StepFootAnswer,
): FootInstruction {
  const way = wayOf(step.kind)
  const amount = tidy(answer[way] ?? 0)
  const told = (value: Micrometres | undefined) => (value === undefined ? undefined : tidy(value))
  const common = {
    foot: answer.foot,
    way,
    amount,
    act: actOf(train, way, amount),
    moves: !showsNought(amount, train),
    answer,
  }
  if (way !== 'shim') return common
  const recipe = body && recipeOf(train, answer)
  return {
    ...common,
    ...(!showsNought(answer.lift ?? 0, train) && {
      lift: `lifted to ${signedText(tidy(answer.lift ?? 0), train.units)} on the way, no higher`,
    }),
    pack: packText(train, told(answer.packBefore), told(answer.packAfter)),
    ...(recipe !== undefined && { recipe }),
  }
}

/** Plates are known of a whole change of a pack alone, not of a portion of one. */
function recipeOf(train: Train, answer: StepFootAnswer): string | undefined {
  const { shim = 0, packAfter, out = [], use = [] } = answer
  if (out.length === 0 && use.length === 0) return undefined
  return recipeBeside(train, {
    ...{ change: shim, out, use },
    ...(packAfter !== undefined && { packAfter }),
  })
}

const wayOf = (kind: StepKind): FootWay =>
  kind === 'axial' ? 'axial' : kind === 'lateral' ? 'side' : 'shim'

/** What is done at a foot; amounts in um. */
function actOf(train: Train, way: FootWay, amount: Micrometres): string {
  if (way === 'shim') return shimText(train, amount)
  const size = fineText(Math.abs(amount), train.units)
  if (showsNought(amount, train)) return way === 'side' ? 'no slide' : 'stays'
  return way === 'side'
    ? `slide ${size} ${towardSide(train, amount)}`
    : `move ${size} along, to the ${amount > 0 ? 'right' : 'left'}`
}

/** What a stop point asks for, without its own name in front. */
export const withoutLead = (hold: string): string =>
  capital(hold.replace(/^(hold|hold point|stop point): /i, ''))

/** A sentence with its full stop. */
const sentence = (text: string): string => (/[.!?]$/.test(text.trim()) ? text : `${text}.`)
