import { describe, expect, it } from 'vitest'
import { turned, type Stand, type Turned } from '../../src/engine/fieldwork/steps/stand'
import type { Train } from '../../src/mechanics/train'

const train = (seenFrom: 'left' | 'right') => ({ seenFrom }) as Train

/**
 * By hand, on a map: x to the north. Seen from the left (south) end 3 o'clock is at the right hand of
 * who looks north: east. Seen from the right (north) end, of who looks south: west.
 */
const seenFromLeft: [Stand, 'side' | 'axial', number, Turned][] = [
  ['three', 'side', 1, 'toward you'],
  ['three', 'side', -1, 'away from you'],
  ['nine', 'side', 1, 'away from you'],
  ['left', 'side', 1, 'to your right'],
  ['right', 'side', 1, 'to your left'],
  // in the east, looking west: north is at the right hand
  ['three', 'axial', 1, 'to your right'],
  ['nine', 'axial', 1, 'to your left'],
  ['left', 'axial', 1, 'away from you'],
  ['right', 'axial', -1, 'away from you'],
  ['left', 'axial', -1, 'toward you'],
]
const seenFromRight: [Stand, 'side' | 'axial', number, Turned][] = [
  ['three', 'side', 1, 'toward you'],
  ['left', 'side', 1, 'to your left'],
  ['right', 'side', 1, 'to your right'],
  // in the west, looking east: north is at the left hand
  ['three', 'axial', 1, 'to your left'],
  ['nine', 'axial', 1, 'to your right'],
  ['right', 'axial', -1, 'away from you'],
]

describe('a direction as it is seen from where one stands', () => {
  it.each(seenFromLeft)(
    'clock seen from the left: at %s, %s %i is %s',
    (stand, way, sign, says) => {
      expect(turned(train('left'), stand, way, sign)).toBe(says)
    },
  )
  it.each(seenFromRight)(
    'clock seen from the right: at %s, %s %i is %s',
    (stand, way, sign, says) => {
      expect(turned(train('right'), stand, way, sign)).toBe(says)
    },
  )
  it('turns over with the sign, from everywhere', () => {
    const opposite: Record<Turned, Turned> = {
      'away from you': 'toward you',
      'toward you': 'away from you',
      'to your left': 'to your right',
      'to your right': 'to your left',
    }
    for (const seenFrom of ['left', 'right'] as const)
      for (const stand of ['three', 'nine', 'left', 'right'] as const)
        for (const way of ['side', 'axial'] as const)
          expect(turned(train(seenFrom), stand, way, -1)).toBe(
            opposite[turned(train(seenFrom), stand, way, 1)],
          )
  })
})
