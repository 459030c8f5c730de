import { expect, test } from 'vitest'
import { planTrain } from '../planned'
import { glpkSolver } from '../../src/solvers/glpk'
import { fineFactor, type Foot } from '../second/train'
import { FixedShims } from './fixedShims'
import { MixedShims } from './mixedShims'
import { shimmed } from './shimmed'
import { counted } from '../counts'

const trains = counted(1, 200, 2)
const firstSeed = Number(process.env.HOLDFAST_SEED ?? 2000)
const solver = await glpkSolver()

/** How far two costs (um) may lie apart: circles are cut to 1e-2 um and slides pay for that. */
const room = (cost: number) => 0.05 + 1e-4 * cost
/** A share is asked for with this much room where something must not be possible at all. */
const closer = 1 - 1e-5

/** What a search that was ended did not find, and did not say to be impossible. */
const unproven = 'missed, and said not to be proven'

/** What the sentence says of other roundings, as people read it: none costs less than so much, this one at most so much more. */
const boundTold =
  /this one may cost up to ([\d.]+) (?:µm|mm|mil) \([\d.]+ %\) more than need be; no rounding .* comes to less than (under )?([\d.]+) (?:µm|mm|mil)\./

/** Half of the last digit that an amount is told with. */
const halfDigit = (text: string): number => 0.5 * 10 ** -(text.split('.')[1]?.length ?? 0)

const saysEnded = (sentence: string) =>
  /The search was ended: this one may cost up to .* more than need be; no rounding/.test(
    sentence,
  ) ||
  /The search was ended: how much less another rounding could come to is not known/.test(sentence)

/** Where the engine says that nothing can be had, changes up to this (um) are looked at. */
const farthest = 3000

test(
  `${trains} random trains: the rounding is within 2 % of a mixed-integer program in another solver or says that it may not be, and its bound holds`,
  async () => {
    const counts: Record<string, number> = {}
    const count = (what: string) => {
      counts[what] = (counts[what] ?? 0) + 1
    }
    const faults: string[] = []
    const missed: string[] = []
    let dearest = 0
    let seed = firstSeed
    for (let done = 0; done < trains; seed++) {
      const least = seed % 2 === 0 ? 0 : 20
      const train = shimmed(seed, least)
      const answer = planTrain(train, solver, { reasons: false, prices: false, packs: true })
      if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
      const { rounded, share, status } = answer
      if (status !== 'planned' || !rounded) continue
      done++
      count(rounded.status)
      const fault = (text: string) => {
        faults.push(`seed ${seed}: ${text}`)
      }
      const miss = (text: string) => {
        count(unproven)
        missed.push(`seed ${seed}: ${text}`)
      }
      const fine = fineFactor(train)
      const cost = (rounded.cost ?? NaN) * fine
      const bound = (rounded.bound ?? NaN) * fine
      const ask = (asked: { share: number; most: number; least: number }) =>
        new MixedShims(train, asked).solve()
      if (rounded.status === 'rounded') {
        const mixed = await ask({ share, most: cost + room(cost), least: 0 })
        count(mixed.kind)
        if (mixed.kind === 'nothing') fault(`costs ${cost}, and the other solver finds nothing`)
        else {
          // where the search is cut off tight its own bound may come out over the plan that it found
          const lowest = mixed.kind === 'found' ? Math.min(mixed.lowest, mixed.cost) : mixed.lowest
          if (cost < lowest - room(cost)) fault(`costs ${cost}, under ${lowest}`)
          if (mixed.kind !== 'found') continue
          const { cost: other } = mixed
          if (bound > other + room(other)) fault(`bound ${bound}, and ${other} can be had`)
          const [told, more = '', under, least = ''] = boundTold.exec(rounded.sentence) ?? []
          if (told !== undefined) {
            count('bounds told')
            // rounded down as it is told, so that it holds as it is read
            if (under === undefined && Number(least) * fine > other + room(other))
              fault(`“${told}”, and ${other / fine} can be had`)
            if (cost - other > (Number(more) + halfDigit(more)) * fine + room(other))
              fault(`“${told}”, and ${(cost - other) / fine} could be saved`)
          } else if (cost > 1.02 * other + room(other)) fault(`dearer than ${other}, untold`)
          if (cost - bound < room(cost)) count('proven')
          dearest = Math.max(dearest, cost / Math.max(other, 1) - 1)
          if (cost > 1.02 * other + room(other)) {
            count('more than 2 % dearer than need be')
            if (!saysEnded(rounded.sentence)) fault(`costs ${cost} and not ${other}, unsaid`)
          }
          const fixed = new FixedShims(train)
          const chosen = new Map<Foot, number>()
          fixed.stands.forEach(({ feet }, s) => {
            for (const foot of feet) chosen.set(foot, mixed.changes[s] ?? 0)
          })
          const again = await fixed.cost(chosen, share * (1 + 1e-7))
          if (!again || Math.abs(again.cost - other) > room(other))
            fault(`its own changes cost ${String(again?.cost)}, not ${other}`)
        }
        if (least > 0 && (rounded.small ?? []).length > 0) {
          // small moves are told, so there is nothing within 1 % without them
          const told = (rounded.ways?.told ?? NaN) * fine
          const alone = await ask({ share: share * closer, most: 1.01 * told, least })
          count(`without small moves: ${alone.kind}`)
          if (alone.kind === 'found' && alone.cost < 1.01 * told - room(told))
            miss(`told small moves at ${cost}, ${alone.cost} without`)
        }
      } else {
        // only a search that came to its end says that there is none
        const proven = rounded.why?.[1]?.includes('to the end of the search') === true
        const found = (what: string) => {
          if (proven) fault(what)
          else miss(what)
        }
        const mixed = await ask({ share: share * closer, most: farthest, least: 0 })
        count(`within the share: ${mixed.kind}`)
        if (mixed.kind === 'found')
          found(`${rounded.status}, but ${mixed.changes.join()} keep the share at ${mixed.cost}`)
        if (rounded.status !== 'no rounding' || mixed.kind === 'found') continue
        const whole = await ask({ share: closer, most: farthest, least: 0 })
        count(`within the whole tolerance: ${whole.kind}`)
        if (whole.kind === 'found')
          found(`no rounding, but ${whole.changes.join()} keep every tolerance at ${whole.cost}`)
      }
    }
    console.log(
      `seeds ${firstSeed} to ${seed - 1}, dearer by ${(100 * dearest).toFixed(2)} % at most`,
      counts,
      missed,
    )
    expect(faults).toEqual([])
    expect(counts[unproven] ?? 0).toBeLessThanOrEqual(trains / 20)
    expect(counts['found'] ?? 0).toBeGreaterThan(trains / 3)
    expect(counts['proven'] ?? 0).toBeGreaterThan(trains / 4)
  },
  counted(600_000, 7_200_000),
)
