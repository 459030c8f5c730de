import type { TrainDocument } from '../../src/document/schema'
import { readTrain } from '../../src/document/readTrain'
import { ChanceStudy } from '../../src/engine/chance/chanceStudy'
import { foundLines } from '../../src/mechanics/uncertainty/foundLines'
import type { Motion } from '../../src/mechanics/motion'
import type { Train } from '../../src/mechanics/train'
import { longTrain } from '../holds/longTrain'

/** A train of so many couplings and states, every machine with growth of its own in each state. */
export function chanceTrain(couplings: number, states: number): Train {
  const long = longTrain(couplings + 1)
  const ids = Array.from({ length: states }, (_, s) => `state ${s + 1}`)
  const machines = long.machines.map((machine, m) => {
    const places = machine.feet.map(({ x }) => x)
    const [first, last] = [Math.min(...places), Math.max(...places)]
    const growth = Object.fromEntries(
      ids.map((id, s) => [
        id,
        [first, last].map((at, i) => ({
          at,
          rise: 0.02 * (s + 1) + 0.01 * (m + i),
          side: 0.01 * s,
        })),
      ]),
    )
    return { ...machine, growth }
  })
  const document = {
    ...long,
    states: ids.map((id) => ({ id, name: id })),
    machines,
  } as unknown as TrainDocument
  const read = readTrain(document)
  if (!read.ok) throw new Error(JSON.stringify(read.refused))
  return read.train
}

/** A move of every machine that is free: a bench asks how long it takes to judge one, not whether it is good. */
const motionsOf = (train: Train): Motion[] =>
  train.bodies.map(({ held }, b) =>
    held
      ? { tx: 0, ty: 0, tz: 0, sy: 0, sz: 0, roll: 0 }
      : { tx: 0, ty: 30 + b, tz: 20 - b, sy: 0.01, sz: 0.02, roll: 0 },
  )

/** Processor time of this process (ms): it depends less than a clock on who else is at work. */
function atWork(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** Processor time (ms) to draw everything and judge a first plan of 10,000 draws, and a second plan of the same train. */
export function timed(train: Train): { first: number; second: number } {
  const motions = motionsOf(train)
  const begun = atWork()
  const study = new ChanceStudy(train, foundLines(train))
  study.good(study.judged(motions))
  const between = atWork()
  study.good(study.judged(motions.map((motion) => ({ ...motion, tz: motion.tz * 0.9 }))))
  return { first: between - begun, second: atWork() - between }
}
