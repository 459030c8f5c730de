import { describe, expect, test } from 'vitest'
import type { ReadyItem } from '../../src/engine/fieldwork/ready/answer'
import { workList, type WorkDoneSoFar } from '../../src/engine/fieldwork/workList'

const item = (what: ReadyItem['what'], where: string, state: ReadyItem['state']): ReadyItem => ({
  what,
  where,
  state,
  words: '',
})
const steps = ['shims', 'slide'].map((short, i) => ({
  id: short,
  number: i + 1,
  name: 'Gear',
  short,
}))
const job = (change: Partial<WorkDoneSoFar> = {}): WorkDoneSoFar => ({
  ready: [
    item('soft foot', 'motor', 'in'),
    item('soft foot', 'gear', 'missing'),
    item('signs', 'c1', 'in'),
  ],
  instructions: steps,
  isDone: () => false,
  again: { read: 0, of: 3 },
  pages: [],
  ...change,
})
const told = (done: WorkDoneSoFar) => workList(done).map(({ state, words }) => `${state}: ${words}`)
const isIn: Partial<WorkDoneSoFar> = {
  ready: [item('soft foot', 'motor', 'in'), item('soft foot', 'gear', 'waived')],
}

describe('the job as one list', () => {
  test('a check that is missing comes next, and every step waits for it', () => {
    expect(told(job())).toEqual([
      'done: What the readings mean: 1 of 1 confirmed',
      'next: Soft foot: 1 of 2 in',
      'open: How the train was found, written down',
      'waits: Step 1. Gear: shims',
      'waits: Step 2. Gear: slide',
      'waits: The couplings read again: 0 of 3 sets',
      'waits: How the train is left, written down',
    ])
    expect(workList(job())[1]?.where).toBe('gear')
  })

  test('a bad check holds the steps as a missing one does; one that is accepted without does not', () => {
    const bad = job({ ready: [item('pipe strain', 'c1', 'bad')], pages: ['as found'] })
    expect(told(bad)[0]).toBe('next: Pipe strain: 0 of 1 in')
    expect(workList(bad).filter(({ state }) => state === 'waits')).toHaveLength(4)
    const waived = job({ ...isIn, pages: ['as found'] })
    expect(told(waived).slice(0, 3)).toEqual([
      'done: Soft foot: 2 of 2 in',
      'done: How the train was found, written down',
      'next: Step 1. Gear: shims',
    ])
  })

  test('reading again waits for the last step, and what is left to write down for both', () => {
    const one = job({ ...isIn, pages: ['as found'], isDone: (step) => step === 'shims' })
    expect(told(one).slice(2)).toEqual([
      'done: Step 1. Gear: shims',
      'next: Step 2. Gear: slide',
      'waits: The couplings read again: 0 of 3 sets',
      'waits: How the train is left, written down',
    ])
    const all = { ...isIn, pages: ['as found'], isDone: () => true }
    expect(told(job({ ...all, again: { read: 1, of: 3 } })).slice(4)).toEqual([
      'next: The couplings read again: 1 of 3 sets',
      'open: How the train is left, written down',
    ])
    expect(told(job({ ...all, again: { read: 3, of: 3 } })).slice(4)).toEqual([
      'done: The couplings read again: 3 of 3 sets',
      'next: How the train is left, written down',
    ])
    const whole = job({ ...all, again: { read: 3, of: 3 }, pages: ['as found', 'as left'] })
    expect(workList(whole).every(({ state }) => state === 'done')).toBe(true)
  })

  test('where nothing needs to move there are no steps and nothing to read again', () => {
    expect(told(job({ ...isIn, instructions: [], pages: ['as found'] }))).toEqual([
      'done: Soft foot: 2 of 2 in',
      'done: How the train was found, written down',
      'next: How the train is left, written down',
    ])
  })
})
