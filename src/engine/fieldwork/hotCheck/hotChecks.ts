import { isEngaged } from '../../../mechanics/engaged'
import {
  againstWords,
  atStopWords,
  movedWords,
  notInReadings,
  runningWords,
} from '../../../language/hotCheckWords'
import { capital } from '../../../language/names'
import { withMeasuredGrowth } from '../../../document/edits/measuredGrowth'
import type { TrainDocument } from '../../../document/schema'
import type { HotCheck } from '../../../mechanics/hotCheck'
import { linesAtStop, type AtStop } from '../../../mechanics/hotCheck/atStop'
import { across } from '../../../mechanics/hotCheck/chain'
import { growthFound } from '../../../mechanics/hotCheck/growthFound'
import { movementOf, type Movement } from '../../../mechanics/hotCheck/movement'
import { runningCouplings, type RunningCoupling } from '../../../mechanics/hotCheck/running'
import type { Misalignment } from '../../../mechanics/readings/equation'
import type { Train } from '../../../mechanics/train'
import type { HotCheckAnswer, HotCouplingAnswer, LineTold, TrimPlanAnswer } from './answer'
import { measuredGrowth } from './corrected'
import { trimOf } from './trim'
import { trimSentence } from './trimSentence'

/** A train with the document it was read from. */
interface Read {
  readonly document: TrainDocument
  readonly train: Train
}

/**
 * What every hot check that is used tells, in their order.
 * @param planned the least trim of a train with its growth corrected; without it none is told
 */
export const hotCheckAnswers = (
  read: Read,
  planned?: (corrected: TrainDocument) => TrimPlanAnswer,
): HotCheckAnswer[] =>
  read.train.hotChecks
    .filter(({ used }) => used)
    .map((check) => hotCheckAnswer(read, check, planned))

/** What is found by a hot check without anything being planned. */
function foundRunning(train: Train, check: HotCheck) {
  const lines = linesAtStop(train, check)
  const movement = movementOf(train, check, lines)
  return {
    lines,
    movement,
    running: runningCouplings(train, check, lines, movement),
    growth: growthFound(train, check, movement),
  }
}

/** The document with the growth that a hot check found in use; itself where the check is not there. */
export function withFoundGrowth({ document, train }: Read, id: string): TrainDocument {
  const check = train.hotChecks.find((one) => one.id === id)
  if (!check) return document
  const { growth } = foundRunning(train, check)
  return withMeasuredGrowth(document, stateOf(train, check), measuredGrowth(train, check, growth))
}

const stateOf = (train: Train, { state }: HotCheck): string => train.states[state]?.id ?? ''

function hotCheckAnswer(
  { document, train }: Read,
  check: HotCheck,
  planned: ((corrected: TrainDocument) => TrimPlanAnswer) | undefined,
): HotCheckAnswer {
  const { lines, movement, running, growth } = foundRunning(train, check)
  const measured = measuredGrowth(train, check, growth)
  const told = growth.filter(({ rows }) => rows.length > 0)
  const stands = trimOf(train, judgedOf(train, check, running))
  // a maker's cold setting stands in the place of growth: what is corrected there would change no plan
  const bySetting = running.some(
    ({ coupling }) => train.couplings[coupling]?.setting?.used === true,
  )
  const trim =
    !planned || stands.when === 'open' || stands.when === 'not' || bySetting
      ? stands
      : {
          ...stands,
          plan: planned(withMeasuredGrowth(document, stateOf(train, check), measured)),
        }
  const { test } = movement
  return {
    check: check.id,
    name: check.name,
    state: stateOf(train, check),
    ...(check.when !== undefined && { when: check.when }),
    ...(check.by !== undefined && { by: check.by }),
    couplings: couplingsAnswer(train, lines, running, judgedOf(train, check, running)),
    machines: told.map(({ machine, rows }) => ({
      machine: train.machines[machine]?.id ?? '',
      rows: rows.map(({ axis, ...row }) => ({ ...row, ...(axis !== 'both' && { axis }) })),
    })),
    against: againstAnswer(train, movement),
    ...(test && { agree: squaresTold(test) }),
    growth: measured.map(({ machine, points }) => ({ machine, points: [...points] })),
    trim,
    sentences: [
      trimSentence(train, check, trim),
      ...(bySetting
        ? [
            'A coupling here is judged by its maker’s cold setting, which stands in the place of growth: no trim is worked out by the growth that was found.',
          ]
        : []),
      ...lines.map((one) => sentence(atStopWords(train, one))),
      ...running.map((one) =>
        sentence(runningWords(train, one, judgedOf(train, check, running).includes(one))),
      ),
      ...told.map((one) => sentence(movedWords(train, one))),
      ...movement.chains.flatMap((chain) => {
        const words = againstWords(train, chain)
        return words === undefined ? [] : [sentence(words)]
      }),
      ...(test ? [agreeSentence(test)] : []),
      ...(lines.length > 0 ? [sentence(notInReadings)] : []),
    ],
  }
}

const sentence = (words: string): string => `${capital(words)}.`

type Test = NonNullable<Movement['test']>

const squaresTold = ({ squares, freedom, limit }: Test) => ({
  chi2: squares,
  dof: freedom,
  limit,
  agree: squares <= limit,
})

const agreeSentence = ({ squares, freedom, limit }: Test): string =>
  `Couplings and movement measured ${squares <= limit ? 'agree' : 'contradict one another'}: sum of squares ${squares.toFixed(1)} with ${freedom} degrees of freedom, up to ${limit.toFixed(1)} is allowed 19 times of 20.`

const againstAnswer = (train: Train, { chains }: Movement): HotCheckAnswer['against'] =>
  chains.flatMap(({ held }) =>
    across.flatMap((way) => {
      const { by, machine } = held[way]
      return by === 'measured'
        ? []
        : [{ machine: train.machines[machine]?.id ?? '', way, tiltAlone: by === 'tilt' }]
    }),
  )

/** What is judged in the state of a check: not where a clutch is open in it. */
const judgedOf = (train: Train, check: HotCheck, running: readonly RunningCoupling[]) =>
  running.filter(({ coupling: c }) => {
    const coupling = train.couplings[c]
    return coupling !== undefined && isEngaged(coupling, stateOf(train, check))
  })

function couplingsAnswer(
  train: Train,
  lines: readonly AtStop[],
  running: readonly RunningCoupling[],
  judged: readonly RunningCoupling[],
): HotCouplingAnswer[] {
  return train.couplings.flatMap((coupling, c): HotCouplingAnswer[] => {
    const line = lines.find((one) => one.coupling === c)
    const ran = running.find((one) => one.coupling === c)
    if (!line && !ran) return []
    const how = line === undefined || (line.how === 'open' && ran) ? 'measured' : line.how
    const cooling = line && line.how !== 'open' ? line.cooling : undefined
    return [
      {
        coupling: coupling.id,
        how,
        ...(line?.how === 'open' && { why: line.why }),
        ...(cooling && {
          cooling: {
            time: cooling.time ?? null,
            between: [cooling.between.low, cooling.between.high ?? null] as [number, number | null],
            ...(cooling.test && { fits: squaresTold(cooling.test) }),
          },
        }),
        times: (line?.times ?? []).map(({ after, numbers: [y = 0, sy = 0, z = 0, sz = 0] }) => ({
          after,
          ...lineTold({ y, sy, z, sz }),
        })),
        ...(ran && {
          running: { ...lineTold(ran.line), u: lineTold(ran.uLine) },
          expected: lineTold(ran.expected),
          apart: { ...lineTold(ran.apart), u: lineTold(ran.u) },
          ...(judged.includes(ran) && {
            share: {
              running: ran.result.share,
              low: ran.reached.low,
              high: ran.reached.high,
              expected: ran.expectedShare,
            },
          }),
        }),
      },
    ]
  })
}

const lineTold = ({ y, z, sy, sz }: Misalignment): LineTold => ({
  offset: { y, z },
  slope: { y: sy, z: sz },
})
