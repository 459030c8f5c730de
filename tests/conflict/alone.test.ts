import { expect, test } from 'vitest'
import { conflictsOf, contradictionOf } from '../../src/engine/infeasible/conflict/conflict'
import { asFound } from '../../src/mechanics/readings/asFound'
import { readTrain } from '../../src/document/readTrain'
import { glpkSolver } from '../../src/solvers/glpk'
import { membersJson } from '../../src/json/reasonsJson'
import { counted } from '../counts'
import { randomTrain } from '../second/randomTrain'
import type { Train } from '../second/train'
import { solveSecond } from '../second/solve'
import { farMore, loosened, widen, type Member } from './moreEntered'

const long = process.env.HOLDFAST_LONG === '1'
const wanted = counted(6, 300, 12)

/** How far two right answers may lie apart where circles take part. */
const apart = 2e-5

test(`what one limit alone must give is enough, and no less is, on ${wanted} random impossible trains`, async () => {
  const solver = await glpkSolver()
  const kinds = new Map<string, number>()
  const wrong: string[] = []
  const told = { whole: 0, noAmount: 0 }
  let [trains, seed, enough, never] = [0, 20_000, 0, 0]
  for (; trains < wanted; seed++) {
    const document = randomTrain(seed)
    const read = readTrain(document)
    if (!read.ok) throw new Error(JSON.stringify(read.refused))
    const { train } = read
    const [first] = conflictsOf(
      contradictionOf(train, train.couplings.map(asFound), solver),
      solver,
      1,
    )
    if (!first) continue
    trains += 1
    const { share } = train.plan
    const together = sentenceAsksOf(first.sentence, membersJson(first.members, train.units))
    if (together) {
      const { floor } = await solveSecond(atEveryFoot(document, together))
      told[together.enough ? 'whole' : 'noAmount'] += 1
      if (floor <= share * (1 + apart) !== together.enough)
        wrong.push(`seed ${seed}: ${first.sentence} and then it reaches ${floor}`)
    }
    for (const member of membersJson(first.members, train.units)) {
      const { limit, alone, where, sentence } = member
      if (limit === 'held') continue
      const by = async (times: number) =>
        (await solveSecond(loosened(document, member, times))).floor
      if (alone === null) {
        never += 1
        if (sentence.includes('enough by itself')) wrong.push(`seed ${seed}: ${sentence}`)
        const { floor } = await solveSecond(loosened(document, farMore(member), 1))
        if (sentence.includes('would not be enough') && !(floor > share))
          wrong.push(`seed ${seed}: ${sentence} and with far more it reaches ${floor}`)
        continue
      }
      // giving in all its states at once, it cannot need more for a part of the train than for the whole
      if (member.lacks !== null && member.lacks > alone * (1 + apart))
        wrong.push(`seed ${seed}: ${where} lacks ${member.lacks}, and ${alone} alone is enough`)
      enough += 1
      kinds.set(limit, (kinds.get(limit) ?? 0) + 1)
      const [whole, less] = [await by(1), await by(0.98)]
      if (!(whole <= share * (1 + apart)))
        wrong.push(`seed ${seed}: ${where} with ${alone} more reaches ${whole} of ${share}`)
      if (!limit.endsWith('key') && !(less > share))
        wrong.push(`seed ${seed}: ${where} needs less than ${alone}`)
      if (!sentence.includes('enough by itself')) wrong.push(`seed ${seed}: ${sentence}`)
    }
  }
  console.log(`${enough} amounts that are enough, ${never} limits that never are`)
  console.log([...kinds].map(([what, n]) => `${what} ${n}`).join(', '))
  expect(wrong).toEqual([])
  console.log(`of all feet together: ${told.whole} amounts enough, ${told.noAmount} never`)
  expect(told.whole + told.noAmount).toBeGreaterThan(0)
  if (long) expect(Math.min(told.whole, told.noAmount)).toBeGreaterThan(0)
  expect(enough).toBeGreaterThan(wanted / 2)
  expect(never).toBeGreaterThan(wanted / 2)
}, 3_600_000)

/**
 * What the sentence of a conflict says that all feet of one machine lack together, where it speaks of
 * one limit of feet alone: an amount that is enough, or that none is.
 */
function sentenceAsksOf(sentence: string, members: readonly Member[]) {
  const feet = members.filter(({ part }) => part.foot !== undefined)
  const [foot] = feet
  const others = members.filter(({ limit }) => ['tilt', 'restraint'].includes(limit))
  const alike = feet.every(
    ({ limit, part }) => limit === foot?.limit && part.body === foot.part.body,
  )
  if (!foot || !alike || others.length > 0 || sentence.includes(', or ')) return undefined
  if (sentence.includes('more there alone would not be enough'))
    return { member: foot, amount: 1e5, enough: false }
  const amount = / lacks? ([\d.]+) (?:µm|mm|mil) /.exec(sentence)?.[1]
  if (amount === undefined) return undefined
  return { member: foot, amount: Number(amount), enough: true }
}

/** The file with that limit larger at every foot of its machine. */
function atEveryFoot(
  document: Train,
  { member, amount }: NonNullable<ReturnType<typeof sentenceAsksOf>>,
): Train {
  const changed = structuredClone(document)
  for (const body of [...changed.machines, ...(changed.skids ?? [])])
    if (body.id === member.part.body)
      for (const foot of body.feet) widen(foot, member.limit, amount)
  return changed
}
