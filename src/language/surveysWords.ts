import type { SquaresTest, TogetherCheck } from '../mechanics/surveys/together'
import type { Train } from '../mechanics/train'
import { capital, listed } from './names'

/** Whether all surveys and the readings tell of the same train, in one sentence without its stop. */
export function surveysVerdict(train: Train, check: TogetherCheck): string {
  const { all, among, others, risk, agree } = check
  const used = train.surveys.filter(({ used: counts }) => counts)
  const names = capital(listed(used.map(({ name }) => name)))
  const rarely = `sound surveys are said to contradict at most once in ${Math.round(1 / risk)}`
  if (agree)
    return `${names} agree with one another and, taken together, with the readings: ${sumOf(all)}, up to ${all.limit.toFixed(1)} is allowed (${rarely})`
  const [farthest] = [...others].sort(([, a], [, b]) => timesOf(b) - timesOf(a))
  const far =
    used.length > 2 && farthest?.[1].agree === false
      ? `; farthest from the readings and the others is ${train.surveys[farthest[0]]?.name ?? ''}`
      : ''
  const sized = (test: SquaresTest) =>
    `${timesOf(test).toFixed(1)} times what uncertainties allow (${sumOf(test)}; ${rarely})${far}`
  if (among?.agree === false)
    return `${names} contradict one another: ${sized(among)}; at least one of them is wrong, or a machine was moved between them`
  const worst = [all, ...others.values()].sort((a, b) => timesOf(b) - timesOf(a))[0] ?? all
  return `${names}, taken together, contradict the readings: ${sized(worst)}`
}

/** What the plan stands on where there are several surveys, as a sentence without its stop. */
export function surveysJoined(train: Train, agree: boolean): string {
  const used = train.surveys.filter(({ used: counts }) => counts)
  const joining = used.filter(({ joins }) => joins)
  if (joining.length === 0) return 'the plan stands on the readings alone'
  const all = used.length === 2 ? 'both' : 'all of them'
  const which =
    joining.length === used.length ? all : `${listed(joining.map(({ name }) => name))} alone`
  return `the lines of the couplings are fitted to ${which}${agree ? '' : ' all the same'}`
}

/** That one survey contradicts all else together, as a sentence without its stop; undefined where it does not. */
export const surveyBesideOthers = (test: SquaresTest): string | undefined =>
  test.agree
    ? undefined
    : `it contradicts the readings and the other surveys taken together: ${sumOf(test)}, where up to ${test.limit.toFixed(1)} is allowed`

/** How far over what chance leaves, as a ratio of deviations. */
const timesOf = ({ squares, limit }: SquaresTest): number =>
  limit > 0 ? Math.sqrt(squares / limit) : 0

const sumOf = ({ squares, freedom }: SquaresTest): string =>
  `sum of squares ${squares.toFixed(1)} with ${freedom} degree${freedom === 1 ? '' : 's'} of freedom`
