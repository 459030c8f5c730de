import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { addFoot } from '../../src/document/edits/feet'
import { bodiesAt } from '../../src/document/edits/bodies'
import { addMachine } from '../../src/document/edits/machines'
import { newTrain } from '../../src/document/edits/newTrain'
import { nextStep } from '../../src/document/edits/nextStep'
import { withValue } from '../../src/document/place'
import { isUnfinished } from '../../src/document/edits/unfinished'
import { readTrain, readTrainText } from '../../src/document/readTrain'
import type { TrainDocument } from '../../src/document/schema'

const folder = new URL('../../shared/refused/', import.meta.url)
const underWay = (document: unknown): boolean => {
  const read = readTrain(document)
  return !read.ok && isUnfinished(document, read.refused)
}
/** As a file has it, where nothing stands for what is not entered. */
const saved = (document: unknown): unknown => JSON.parse(JSON.stringify(document))

test('a train is under way from nothing on, step by step, and as it is saved', () => {
  let train: TrainDocument = newTrain()
  const steps = [train]
  for (const at of [0, 1, 2]) steps.push((train = addMachine(train, at).document))
  const body = bodiesAt(train)[0]
  if (!body) throw new Error('no machine')
  steps.push((train = addFoot(train, body).document))
  steps.push((train = withValue(train, ['machines', 0, 'axis', 'left', 'z'], 500)))
  steps.push(withValue(train, ['machines', 0, 'feet', 0, 'pack', 'min'], 1))
  for (const step of steps) {
    expect(underWay(step), JSON.stringify(step)).toBe(true)
    expect(underWay(saved(step)), JSON.stringify(step)).toBe(true)
  }
})

test.each([
  ['machines.0.feet.0.x', undefined],
  ['machines.1.restraints.0.side', [-200, null]],
  ['machines.2.feet.0.gaps', [1, null, null, 2]],
  ['machines.2.feet', []],
  ['couplings.0.axial', { found: 3 }],
  ['couplings.0.tolerance', { shape: 'round' }],
  ['couplings.0.found', []],
  ['couplings.0.found.0.readings.1', [3, null]],
  ['plan.shims', { step: 50, stock: [null] }],
])('an example without %s is under way', (at, value) => {
  const text = readFileSync(
    new URL('../../examples/bolt-bound-gearbox.json', import.meta.url),
    'utf8',
  )
  const path = at.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key))
  const train = withValue(JSON.parse(text) as TrainDocument, path, value)
  expect(underWay(saved(train))).toBe(true)
  expect(underWay({ ...train, version: 2 })).toBe(false)
  expect(underWay({ ...train, extra: 1 })).toBe(false)
})

test('of the files that are refused, only those that lack a figure count as under way', () => {
  const files = readdirSync(folder).filter((file) => file !== 'index.json')
  const open = files.filter((file) => {
    const text = readFileSync(new URL(file, folder), 'utf8')
    const read = readTrainText(text)
    if (read.ok) return false
    try {
      return isUnfinished(JSON.parse(text), read.refused)
    } catch {
      return false
    }
  })
  expect(files.length).toBeGreaterThan(100)
  const lacking = /^(open|no-feet|no-machines|one-machine|skid-no-feet|tolerance-(none|shape-only))/
  const missing = /-(missing|null|incomplete|empty)$/
  const names = open.map((file) => file.replace('.json', ''))
  expect(names.filter((name) => !lacking.test(name) && !missing.test(name))).toEqual([])
  for (const name of ['foot-x-missing', 'reading-null', 'no-feet', 'open-slope-side'])
    expect(names).toContain(name)
  for (const name of ['format-missing', 'foot-id-missing', 'version-newer', 'foot-x-text'])
    expect(names).not.toContain(name)
})

test('what comes next goes down the sheet: all machines, all feet, all couplings, then what was read', () => {
  const text = readFileSync(
    new URL('../../examples/bolt-bound-gearbox.json', import.meta.url),
    'utf8',
  )
  const whole = JSON.parse(text) as TrainDocument
  expect(nextStep(whole)).toBeUndefined()
  const unread = {
    ...whole,
    couplings: whole.couplings.map((coupling) => ({ ...coupling, found: [] })),
  }
  const flexless = withValue(unread, ['couplings', 2, 'tolerance', 'flex'], undefined)
  const footless = {
    ...flexless,
    machines: flexless.machines.map((machine) => ({ ...machine, feet: [] })),
  }
  const heightless = withValue(footless, ['machines', 3, 'axis', 'z'], undefined)
  expect([heightless, footless, flexless, unread].map((train) => nextStep(train)?.at)).toEqual([
    'machines[3].axis.z',
    'machines[0].feet',
    'couplings[2].tolerance.flex',
    'couplings[0].found',
  ])
})
