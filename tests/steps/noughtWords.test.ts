import { describe, expect, it } from 'vitest'
import { shimWords, slideWords } from '../../src/engine/fieldwork/steps/words'
import { underDigits } from '../../src/language/amounts'
import { example } from '../holds/choice'

describe('an amount that the digits show as nothing', () => {
  it.each([
    ['mm', 'under 0.01 mm', 4.9],
    ['mil', 'under 0.1 mil', 1.2],
    ['um', 'under 1 µm', 0.4],
  ] as const)('in %s is told by its bound, and what to do', (fine, words, micrometres) => {
    const train = { ...example('pump-and-motor') }
    const told = { ...train, units: { ...train.units, fine } }
    const [body] = told.bodies
    if (!body) throw new Error('no body')
    expect(underDigits(told.units)).toBe(words)
    const changes = [{ foot: '1', by: micrometres }]
    expect(shimWords(told, body, changes, ' Jack the left end alone.')).toContain(
      `${words} at every foot, thinner than any plate; leave its packs as they are.`,
    )
    expect(shimWords(told, body, changes, ' Jack the left end alone.')).not.toContain('Jack')
    expect(slideWords(told, body, changes)).toContain(
      `${words} at every foot, less than a dial shows; leave it where it stands.`,
    )
    const shown = [{ foot: '1', by: 3 * micrometres }]
    expect(shimWords(told, body, shown, ' Jack the left end alone.')).toMatch(
      /^Shim the motor: put in .* under foot 1\. Jack the left end alone\.$/,
    )
    expect(slideWords(told, body, shown)).toMatch(/^Slide the motor: foot 1 /)
  })
})
