import { chiSquareQuantile } from '../chiSquare'
import type { Misalignment } from '../readings/equation'
import type { Train } from '../train'
import type { ChainErrors } from './chainAxes'
import { amongSurveys, dot, observed, type Observed } from './observed'
import { entriesOf, explaining, type OneEntry } from './oneEntry'

/** A sum of squares in standard uncertainties, chi-square with `freedom` where everything is sound. */
export interface SquaresTest {
  readonly squares: number
  readonly freedom: number
  readonly limit: number
  readonly agree: boolean
}

/** Whether several surveys and the readings tell of the same train, all taken together. */
export interface TogetherCheck {
  /** All numbers of all surveys beside the readings. */
  readonly all: SquaresTest
  /** The surveys among themselves, whatever was read; left out where no number of one stands against another. */
  readonly among?: SquaresTest
  /** Each survey against the readings and all other surveys; left out where nothing of it stands against these. */
  readonly others: ReadonlyMap<number, SquaresTest>
  readonly agree: boolean
  /** Chance at most that sound surveys are said to contradict by any of these. */
  readonly risk: number
  /** Where they contradict: the single entries, of whatever survey or coupling, that explain all of it. */
  readonly explains: readonly OneEntry[]
}

/** Half the risk of one survey alone: the other half is that of the surveys one by one. */
export const togetherRisk = 0.025

/**
 * Tests all surveys at once: each may agree with weak readings, and contradict the others. What one survey adds to the sum
 * of squares of all is chi-square by itself, and so is what all add to the surveys' own sums among themselves (nested least
 * squares, textbook). Half of the risk is the whole sum's, the rest is shared by the other tests (Bonferroni).
 * @param surveys indices in `surveys`, at least two
 */
export function togetherCheck(
  train: Train,
  surveys: readonly number[],
  lines: readonly Misalignment[],
  errors: ChainErrors,
): TogetherCheck {
  const sumOf = ({ rest, freedom }: Observed): Sum => ({ squares: dot(rest, rest), freedom })
  const seen = observed(train, surveys, lines, errors)
  const each = togetherRisk / 2 / (surveys.length + 1)
  const sum = sumOf(seen)
  const all = tested(sum, [], togetherRisk / 2)
  const others = surveys.flatMap((survey): [number, SquaresTest][] => {
    const others = surveys.filter((other) => other !== survey)
    const rest = sumOf(observed(train, others, lines, errors))
    const test = tested(sum, [rest], each)
    return test.freedom > 0 ? [[survey, test]] : []
  })
  const among = tested(
    amongSurveys(train, surveys),
    surveys.map((survey) => amongSurveys(train, [survey])),
    each,
  )
  const agree = all.agree && among.agree && others.every(([, test]) => test.agree)
  return {
    ...{ all, risk: togetherRisk, others: new Map(others) },
    ...(among.freedom > 0 && { among }),
    agree,
    explains: agree ? [] : explaining(entriesOf(train, seen, sum.squares), sum.freedom),
  }
}

interface Sum {
  readonly squares: number
  readonly freedom: number
}

/** What a sum has beyond those of its parts. */
function tested(whole: Sum, parts: readonly Sum[], risk: number): SquaresTest {
  const squares = Math.max(
    0,
    parts.reduce((rest, part) => rest - part.squares, whole.squares),
  )
  const freedom = parts.reduce((rest, part) => rest - part.freedom, whole.freedom)
  const limit = freedom > 0 ? chiSquareQuantile(risk, freedom) : 0
  return { squares, freedom, limit, agree: freedom <= 0 || squares <= limit }
}
