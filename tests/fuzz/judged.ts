import { sheetFileOf } from '../../src/cli/sheet'
import { readTrainText } from '../../src/document/readTrain'
import { firstRefusals } from '../../src/document/refusal'
import { everyStage, PlanningRun } from '../../src/engine/planningRun'
import type { Solver } from '../../src/engine/lp/solver'
import { checkRead } from '../../src/engine/plan/checkTrain'
import { holdsOf } from '../../src/engine/studies/holds/holdRows'
import { answerJson } from '../../src/json/answerJson'
import { holdsJson } from '../../src/json/holdsJson'
import { reportJson } from '../../src/json/planJson'
import { firstUnseen } from '../../src/language/harmless'
import { figuresOf } from '../../src/scene/figures'
import { checkText } from '../../src/text/checkText'
import { holdsText } from '../../src/text/holdsText'
import { planText } from '../../src/text/planText'

/** What came of a document. */
export interface Judged {
  readonly status: string
  /** What should never be: an exception, a number that is none, a budget passed; empty where all is well. */
  readonly faults: readonly string[]
  readonly solves: number
}

/** Bodies up to which every choice of held ones is solved here. */
const mostHeld = 4

/** Most calls of the solver that one document may take. */
const mostSolves = 20_000

/**
 * A text as a file that is checked and planned.
 * @param whole every stage, as the command line plans; otherwise the plan alone
 */
export function judged(text: string, solver: Solver, whole: boolean): Judged {
  const faults: string[] = []
  let solves = 0
  let stage = 'read'
  const counting: Solver = {
    ...solver,
    solve: (program, seconds, warm) => {
      if (++solves > mostSolves) throw new Error('over budget')
      return solver.solve(program, seconds, warm)
    },
  }
  const told = (words: string) => {
    const wrong = /\b(NaN|Infinity|undefined|null)\b/.exec(words.replace(/[“"][^”"]*[”"]/g, ''))
    if (wrong)
      faults.push(`${stage}: ${words.slice(Math.max(0, wrong.index - 80), wrong.index + 60)}`)
    const unseen = firstUnseen(words.replaceAll('\n', ''))
    if (unseen) faults.push(`${stage}: ${unseen.code} is told`)
  }
  const numbers = (value: unknown) => {
    const place = placeOfNone(value)
    if (place !== undefined) faults.push(`${stage}: no number at ${place}`)
  }
  let status = 'refused'
  try {
    const read = readTrainText(text)
    if (!read.ok) {
      if (read.refused.length === 0) faults.push('refused without a reason')
      for (const { why } of firstRefusals(read.refused)) {
        told(why)
        if (why.length > 2000) faults.push(`a refusal of ${why.length} characters`)
      }
      return { status, faults, solves }
    }
    status = 'read'
    stage = 'check'
    const report = checkRead(read.train)
    numbers(reportJson(report, read.train.units))
    told(checkText(read.train, report))
    stage = 'plan'
    const run = new PlanningRun(read, counting)
    const answer = run.answer(whole ? everyStage : {})
    status = answer.status
    numbers(answerJson(answer, read.train))
    told(planText(read.train, answer))
    numbers(figuresOf(read.train, answer))
    if (whole) {
      solves = 0
      stage = 'holds'
      // a few machines are enough to go through every face of the list
      const few = holdsOf(read.train, counting, { prices: true, bodies: mostHeld })
      numbers(holdsJson(few, read.train))
      told(holdsText(read.train, few))
      solves = 0
      stage = 'paper'
      const sheet = sheetFileOf(read, counting, { size: 'a4', print: paperFor(text) })
      if (sheet.status !== 'stopped') told(textOf(sheet.html))
      solves = 0
    }
    if (answer.status === 'stopped' || answer.status === 'unproven') status += `: ${answer.why}`
  } catch (error) {
    faults.push(
      `${stage}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    )
  }
  return { status, faults, solves }
}

/** Either print, by the document alone. */
const paperFor = (text: string) => (text.length % 2 === 0 ? 'crew' : 'office')

/** The words of a page: no markup, styles or names of attributes. */
const textOf = (html: string): string =>
  html.replace(/<(style|script|svg)[\s\S]*?<\/\1>/g, ' ').replace(/<[^>]*>/g, ' ')

/** Where in a value a number stands that is none; undefined where all are. */
function placeOfNone(value: unknown, place = ''): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${place} (${value})`
  if (typeof value !== 'object' || value === null) return undefined
  for (const [key, inner] of Object.entries(value)) {
    const found = placeOfNone(inner, `${place}.${key}`)
    if (found !== undefined) return found
  }
  return undefined
}
