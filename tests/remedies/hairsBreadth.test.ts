import { expect, it } from 'vitest'
import { changed } from '../../src/engine/infeasible/remedies/change'
import { counted } from '../counts'
import { kept } from '../kept/kept'
import { randomTrain } from '../second/randomTrain'
import { planOf, reasonsOf } from './bench'

/** The first of them, kept: they are asked whatever the random ones come to be. */
const before = ['hair-under-the-floor-1', 'hair-under-the-floor-2']
const wanted = before.length + counted(1, 100)

/** Digits of a number that say something, as somebody types it. */
const digitsOf = (value: number) => String(value).replace(/^-?0?\.?0*|\./g, '').length

/** Those, and random trains that are asked for a hair less of their tolerance than can be reached. */
function* hairs(): Generator<{ seed: number | string; document: unknown }> {
  for (const name of before) yield { seed: name, document: kept(name) }
  for (let seed = 3514; ; seed++) {
    const document = randomTrain(seed)
    const plan = planOf(document)
    if (plan.status !== 'impossible' || !plan.floor || plan.floor > 1) continue
    const share = plan.floor - 1e-6
    const hair = { ...document, plan: { ...document.plan, share, worst: false } }
    if (planOf(hair).status === 'impossible') yield { seed, document: hair }
  }
}

it(`of ${wanted} trains a hair's breadth from a plan, every remedy says what can be entered, and it is enough`, () => {
  const wrong: string[] = []
  let [trains, remedies] = [0, 0]
  for (const { seed, document } of hairs()) {
    if (trains++ === wanted) break
    const {
      conflict,
      conflictSentence,
      behind,
      remedies: told,
      document: read,
    } = reasonsOf(document)
    const sentences = [
      conflictSentence ?? '',
      ...(conflict ?? []).map(({ sentence }) => sentence),
      ...(behind ?? []).map(({ sentence }) => sentence),
    ]
    for (const text of sentences)
      if (/\de-\d|0\.000\d/.test(text)) wrong.push(`seed ${seed}: ${text}`)
    for (const { solves, sentence, change, kind } of told.filter((one) => one.solves)) {
      remedies += 1
      if (/\b([\d.]+) % of tolerance instead of \1 %/.test(sentence))
        wrong.push(`seed ${seed}: ${sentence}`)
      for (const { at, to } of change)
        if (typeof to === 'number' && kind.includes('tolerance') && digitsOf(to) > 4)
          wrong.push(`seed ${seed}: ${at} ${to}`)
      if (solves && planOf(changed(read, change)).status === 'impossible')
        wrong.push(`seed ${seed}: still impossible, ${sentence}`)
    }
  }
  expect(wrong).toEqual([])
  expect(remedies).toBeGreaterThan(wanted)
})
