import { notEngaged } from '../language/engagedWords'
import { isEngaged } from '../mechanics/engaged'
import { sheetText } from './layout'
import { readTrain } from '../document/readTrain'
import { fineSaid } from '../document/said'
import type { TrainDocument } from '../document/schema'
import { factKeys, factWords } from '../document/words/factWords'
import { pipeStrainOf, recordFactsOf, type RecordFacts, type RecordPage } from '../document/work'
import { verifyRecord } from '../engine/fieldwork/loop/record'
import { fineText, shareText, signedDigits } from '../language/amounts'
import { capital, listed } from '../language/names'
import { lineInWords, setName } from '../language/readingSets'
import { plateDigits } from '../language/recipes'
import { sagOf } from '../mechanics/readings/equation'
import type { ReadingSet } from '../mechanics/readingSet'
import { corners, type Coupling, type Train } from '../mechanics/train'
import { towardSide } from '../language/sides'
import { fineSign } from '../mechanics/units'
import { roundLines, type Names } from './roundText'
import { couplingLimitsText } from '../scene/couplingFacts'

/** The record as text to read and to mail: pages in order, what was read and how it was judged, seals. */
export function recordText(job: string, pages: readonly RecordPage[]): string {
  const verified = verifyRecord(pages)
  const name = namesIn(pages)
  return sheetText([
    `Record of ${job}`,
    pages.length === 0
      ? 'No pages.'
      : verified.sound
        ? `${pages.length} ${pages.length === 1 ? 'page' : 'pages'}, each as it was written.`
        : verified.words,
    ...pages.flatMap(({ kind, when, by, words, content, seal }, i) => [
      '',
      `Page ${i + 1}: ${kind}, ${when}${by === undefined ? '' : `, ${by}`}`,
      words,
      ...contentLines(content, name),
      `Seal ${seal}`,
    ]),
    '',
  ])
}

/** The same for programs, with nothing left out: what the seals are worked out from. */
export const recordJson = (name: string, pages: readonly RecordPage[]): string =>
  `${JSON.stringify({ record: name, pages }, null, 2)}\n`

const objectOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {}

/** What bodies and couplings are called on the newest page that has a whole job. */
function namesIn(pages: readonly RecordPage[]): Names {
  const names = new Map<string, string>()
  for (const { content } of pages) {
    const read = readTrain(objectOf(content)['job'])
    if (!read.ok) continue
    for (const { id, name } of [...read.train.bodies, ...read.train.couplings]) names.set(id, name)
  }
  return (id) => names.get(id) ?? id
}

/** What a page holds, in words where it is a whole job or a round of work; anything else as it was written. */
function contentLines(content: unknown, name: Names): string[] {
  if (content === undefined) return []
  const { job, asFound, asLeft, facts } = objectOf(content)
  const read = job === undefined ? undefined : readTrain(job)
  if (!read?.ok) return roundLines(content, name) ?? [JSON.stringify(content, null, 2)]
  const { train, document } = read
  return [
    ...(document.site === undefined ? [] : [`Site: ${document.site}`]),
    ...factLines(recordFactsOf(facts) ?? {}),
    ...judged(train, asLeft ?? asFound),
    ...readings(train),
    ...strain(train, document),
    ...softFeet(train),
    ...packs(train),
  ]
}

const factLines = (facts: RecordFacts): string[] =>
  factKeys.flatMap((key) => {
    const said = facts[key]?.trim() ?? ''
    return said === '' ? [] : [`${capital(factWords[key])}: ${said}`]
  })

/** Every coupling in every state beside its tolerance; pass is what the share asked for allows. */
function judged(train: Train, standing: unknown): string[] {
  const entries = Array.isArray(standing) ? standing.map(objectOf) : []
  return train.couplings.flatMap((coupling) => {
    const shares = objectOf(entries.find((entry) => entry['coupling'] === coupling.id)?.['share'])
    const { basis } = coupling.tolerance
    return [
      `${capital(coupling.name)}, limit ${couplingLimitsText(train, coupling)}${basis === undefined ? '' : ` (${basis})`}:`,
      ...train.states.flatMap(({ id, name, factor }) => {
        if (!isEngaged(coupling, id)) return [`  ${name}: ${notEngaged}, not judged`]
        const share = shares[id]
        if (typeof share !== 'number') return []
        const times = factor === 1 ? '' : ` times ${factor}`
        return [
          `  ${name}: ${shareText(share)} of the limit${times}: ${verdict(share, train.plan.share)}`,
        ]
      }),
    ]
  })
}

function verdict(share: number, asked: number): string {
  if (share > 1) return 'FAIL'
  return share > asked + 0.005 ? `pass, but over the ${shareText(asked)} asked for` : 'pass'
}

/** Every set as it was read, with the bar's reading where a bracket sags. */
const readings = (train: Train): string[] =>
  train.couplings.flatMap((coupling) => [
    `${capital(coupling.name)}, readings in ${fineSign[train.units.fine]}:`,
    ...coupling.found.flatMap((set, index) => {
      const name = `  ${capital(setName(train, set, index))}`
      if (set.kind === 'line') return [`${name}: ${givenLine(train, coupling, set)}`]
      const sag = sagOf(set)
      const told = set.readings.map(
        ({ hour, value }) => `at ${hour}: ${signedDigits(value, train.units)}`,
      )
      return [
        `${name}: ${told.join(', ')}${sag === 0 ? '' : `; the bar read ${signedDigits(-2 * sag, train.units)} at 6 after 0 at 12`}`,
      ]
    }),
  ])

type LineSet = Extract<ReadingSet, { kind: 'line' }>

/** A line that was given, with what of it was not read. */
function givenLine(train: Train, coupling: Coupling, { offset, slope }: LineSet): string {
  const both = ({ y = 0, z = 0 }: LineSet['offset']) => ({ y, z })
  const open = [
    ...(offset.z === undefined ? ['rise'] : []),
    ...(offset.y === undefined ? ['side'] : []),
    ...(slope.z === undefined ? ['slope up'] : []),
    ...(slope.y === undefined ? ['slope aside'] : []),
  ]
  const told = lineInWords(train, coupling, both(offset), both(slope))
  return open.length === 0 ? told : `${told}; not read: ${listed(open)}`
}

/** Pipe strain as it was read: which way each flange drew the shaft. */
const strain = (train: Train, { couplings }: TrainDocument): string[] =>
  couplings.flatMap((coupling) =>
    (pipeStrainOf(coupling.strain)?.flanges ?? []).map(({ name, y, z, when, by }) => {
      const up =
        z === undefined
          ? 'up or down not read'
          : `${fineSaid(z, train.units)} ${z < 0 ? 'down' : 'up'}`
      const aside =
        y === undefined
          ? 'to the side not read'
          : `${fineSaid(y, train.units)} ${towardSide(train, y)}`
      const who = [by, when].filter((part) => part !== undefined).join(', ')
      return `Pipe strain at ${train.couplings.find(({ id }) => id === coupling.id)?.name ?? coupling.id}, ${name}: ${up}, ${aside}${who === '' ? '' : `; ${who}`}`
    }),
  )

/** Soft feet as they were read: how far each rose, and its corner gaps. */
const softFeet = (train: Train): string[] => {
  const text = (value: number) => fineText(value, train.units)
  const lines = train.bodies.flatMap((body) =>
    body.feet.flatMap(({ id, soft, gaps }) => {
      const told = [
        ...(soft === undefined ? [] : [`rose ${text(soft)}`]),
        ...(gaps === undefined
          ? []
          : [
              `gaps ${corners.map(({ end, side }, i) => `${end} end ${towardSide(train, side === 'three' ? 1 : -1)} ${text(gaps[i] ?? 0)}`).join(', ')}`,
            ]),
      ]
      return told.length === 0 ? [] : [`  ${body.name}, foot ${id}: ${told.join('; ')}`]
    }),
  )
  return lines.length === 0 ? [] : ['Soft foot, each bolt loosened by itself:', ...lines]
}

/** The shim map: what lies under every foot, with its plates where they are known. */
const packs = (train: Train): string[] => {
  const lines = train.bodies.flatMap((body) =>
    body.feet.flatMap(({ id, pack }) => {
      if (!pack) return []
      const plates = pack.plates?.map((plate) => plateDigits(plate, train.units)) ?? []
      return [
        `  ${body.name}, foot ${id}: ${fineText(pack.now, train.units)}${plates.length === 0 ? '' : ` = ${plates.join(' + ')}`}`,
      ]
    }),
  )
  return lines.length === 0 ? [] : ['Packs:', ...lines]
}
