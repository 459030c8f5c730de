import { expect, test } from 'vitest'
import { readTrain } from '../../src/document/readTrain'
import { labelDocument, labelTrains, randomLabelTrain } from './labelTrains'

const all = [...labelTrains, ...Array.from({ length: 60 }, (_, i) => randomLabelTrain(i))]

test('every train whose labels are measured in the browser can be read', () => {
  all.forEach((train, i) => {
    const read = readTrain(labelDocument(train, i))
    expect(read.ok ? [] : read.refused, train.what).toEqual([])
  })
})
