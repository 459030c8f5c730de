import { riseSaid, sideSaid, slopeInWords } from '../../document/words/lineSaid'
import { useJob } from '../stores/job'

/** One of the four numbers of a line between two machines, and how it is said. */
export interface LineWay {
  readonly key: string
  readonly name: string
  readonly part: 'offset' | 'slope'
  readonly axis: 'y' | 'z'
  readonly says: (value: number) => string
}

/** Offsets and slopes of a coupling in words: right machine against left, signs spoken. */
export function useLineSaying(index: () => number): { readonly ways: readonly LineWay[] } {
  const job = useJob()
  const said =
    (words: (document: NonNullable<typeof job.document>, c: number, value: number) => string) =>
    (value: number) => (job.document?.couplings[index()] ? words(job.document, index(), value) : '')
  const coupling = (document: NonNullable<typeof job.document>, c: number) => {
    const found = document.couplings[c]
    if (!found) throw new RangeError(`no coupling ${c}`)
    return found
  }
  return {
    ways: [
      {
        key: 'oz',
        name: 'offset up',
        part: 'offset',
        axis: 'z',
        says: said((d, c, value) => riseSaid(d, coupling(d, c), value, job.units)),
      },
      {
        key: 'oy',
        name: 'offset sideways',
        part: 'offset',
        axis: 'y',
        says: said((d, c, value) => sideSaid(d, coupling(d, c), value, job.units)),
      },
      {
        key: 'sz',
        name: 'slope up',
        part: 'slope',
        axis: 'z',
        says: said((d, c, value) => slopeInWords(d, coupling(d, c), 'z', value, job.units)),
      },
      {
        key: 'sy',
        name: 'slope sideways',
        part: 'slope',
        axis: 'y',
        says: said((d, c, value) => slopeInWords(d, coupling(d, c), 'y', value, job.units)),
      },
    ],
  }
}
