import type { Coupling, Survey, Train } from '../train'
import { fitted, type FourNumbers } from './coupled'
import { gains } from './fit'
import { dot, wholeFit } from './wholeFit'

/** The lines of all couplings as found, with what surveys that join make of them. */
export interface Found {
  line: (c: Coupling) => FourNumbers
  /** What an error of one coupling's line, as read, does to the lines found. */
  carried: (c: Coupling, error: FourNumbers) => Map<Coupling, FourNumbers>
  /** What one standard deviation of each number surveyed does to them. */
  surveyed: { id: string; by: Map<Coupling, FourNumbers> }[]
}

export const isJoined = (survey: Survey): boolean => survey.use !== false && survey.joins === true

/** The lines of a train (in mm and um): as read, or by one fit of everything (dense normal equations). */
export function foundLines(train: Train): Found {
  const joining = (train.surveys ?? []).filter(isJoined)
  if (joining.length === 0)
    return {
      line: (c) => fitted(c).line,
      carried: (c, error) => new Map([[c, error]]),
      surveyed: [],
    }
  const { couplings } = train
  const { equations, fourRows, ofRead } = wholeFit(train, joining)
  const gain = gains(equations)
  /** The lines found where the equations have these values. */
  const answering = (values: readonly number[]): Map<Coupling, FourNumbers> => {
    const unknowns = gain.map((row) => dot(row, values))
    return new Map(
      couplings.map((c) => {
        const [oy = NaN, oz = NaN, sy = NaN, sz = NaN] = fourRows(c).map((row) =>
          dot(row, unknowns),
        )
        return [c, [oy, oz, sy, sz]]
      }),
    )
  }
  const lines = answering(equations.map(({ value }) => value))
  return {
    line: (c) => lines.get(c) ?? [NaN, NaN, NaN, NaN],
    carried: (c, error) => {
      const i = couplings.indexOf(c)
      const changes = ofRead(c, error)
      return answering(
        equations.map((_, k) => (k >= 4 * i && k < 4 * i + 4 ? (changes[k - 4 * i] ?? 0) : 0)),
      )
    },
    surveyed: equations.flatMap(({ survey, u }, k) =>
      survey === undefined
        ? []
        : [{ id: survey, by: answering(equations.map((_, i) => (i === k ? u : 0))) }],
    ),
  }
}
