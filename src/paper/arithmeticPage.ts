import { asFound } from '../mechanics/readings/asFound'
import { setName } from '../language/readingSets'
import { capital, inSentence } from '../language/names'
import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import { factsOf, pencilLines, type Fact, type PencilLine, type Plane } from './arithmetic'
import { fittedBlocks } from './fittedBlocks'
import type { Drawn } from './job'
import type { Block, Chapter, Table } from './page'
import { pencilOf, slopeRule, type Pencil } from './pencil'
import { centreBlocks, moveBeside } from './pencilCentre'
import { checkSum, pencilCheck } from './pencilCheck'
import { reductionSteps, together, type Step } from './reductionSteps'
import { sumsBlocks } from './sumsBlocks'
import { joinedNote } from './surveyBlocks'
import { sidesInWords } from '../language/sides'
import { signInWords } from './words'

/**
 * The coupling whose arithmetic is written out: of those that join machines on different ground the one whose machines
 * move most; where nothing moves, or two move alike, dials on rims and faces before others, exact before fitted.
 */
export function pencilCoupling(job: Drawn): Coupling | undefined {
  const { train } = job
  const dials = (set: ReadingSet) => set.kind === 'rim' || set.kind === 'face'
  const rank = (coupling: Coupling): number => {
    const exact = pencilLines(coupling)
    if (!exact) return 3
    if (exact.some(({ facts }) => facts.some(({ how }) => how.kind === 'least squares'))) return 2
    return coupling.found.every(dials) ? 0 : 1
  }
  const onOneSkid = ({ left, right }: Coupling) => {
    const skid = train.machines[left]?.skid
    return skid !== undefined && skid === train.machines[right]?.skid
  }
  const apart = train.couplings.filter((coupling) => !onOneSkid(coupling))
  const some = (apart.length > 0 ? apart : train.couplings).map((coupling) => ({
    coupling,
    // moves that a pencil writes alike are alike
    move: Math.round(moveBeside(job, coupling) * 10),
    rank: rank(coupling),
  }))
  return some.sort((a, b) => b.move - a.move || a.rank - b.rank)[0]?.coupling
}

/**
 * One coupling by hand: readings halved, sag taken off, the line drawn, read off at the feet, moved to its centre beside
 * what the plan does, and the plan checked.
 */
export function arithmeticPage(job: Drawn): Chapter[] {
  const { train } = job
  const coupling = pencilCoupling(job)
  if (!coupling) return []
  const pencil = pencilOf(train)
  const lines = pencilLines(coupling)
  const state = checkSum(job, coupling)?.state
  const joins = train.surveys.some((survey) => survey.joins)
  return [
    {
      section: 'arithmetic',
      title: `By hand: ${coupling.name}`,
      blocks: [
        {
          kind: 'text',
          look: 'plain',
          text: `${joins ? 'With a pencil, by the readings alone.' : 'With a pencil this comes out as the planner has it.'} Figures in ${pencil.unit}, distances in ${pencil.lengthUnit}; ${slopeRule(train)}. ${signInWords} ${sidesInWords(train, 'drawing')} Here + is up, and toward 3 o'clock.`,
        },
        ...(joins ? [joinedNote] : []),
        ...coupling.found.flatMap((set, index) => setBlocks(train, pencil, coupling, set, index)),
        ...(lines ? lineBlocks(pencil, coupling, lines) : fittedBlocks(train, pencil, coupling)),
        ...feetBlocks(train, pencil, coupling),
        ...(state ? centreBlocks(job, coupling, pencil, state) : []),
        ...pencilCheck(job, coupling, pencil),
      ],
    },
  ]
}

function setBlocks(
  train: Train,
  pencil: Pencil,
  coupling: Coupling,
  set: ReadingSet,
  index: number,
): Block[] {
  if (!set.used) return []
  const facts = factsOf(coupling, set, index)
  const heading: Block = { kind: 'heading', text: capital(setName(train, set, index)) }
  if (facts.length === 0)
    return [
      heading,
      {
        kind: 'text',
        look: 'plain',
        text: 'By itself this set fixes neither plane: it counts together with the others.',
      },
    ]
  const fitted = facts.find(({ how }) => how.kind === 'least squares')
  const steps = (fact: Fact) => reductionSteps(pencil, coupling, set, fact)
  const offsets = facts.filter(({ what }) => what === 'offset')
  const slopes = facts.filter(({ what }) => what === 'slope')
  return [
    heading,
    ...(fitted ? sumsBlocks(pencil, fitted) : []),
    ...[offsets, slopes].flatMap((kind) =>
      kind.length === 0 ? [] : stepTables(kind.map((fact) => ({ fact, steps: steps(fact) }))),
    ),
  ]
}

/** Both planes side by side where the steps are the same, else one after the other. */
function stepTables(parts: readonly { fact: Fact; steps: readonly Step[] }[]): Table[] {
  const [a, b] = parts
  if (a && b && together(a.steps, b.steps))
    return [
      {
        kind: 'table',
        columns: [
          { head: '', width: 5 },
          { head: 'up and down', width: 3.4 },
          { head: 'to the sides', width: 3.4 },
        ],
        rows: a.steps.map(({ words, result }, i) => [words, result, b.steps[i]?.result ?? '']),
      },
    ]
  return parts.map(({ fact, steps }) => ({
    kind: 'table',
    columns: [
      { head: '', width: 5 },
      { head: planeWords(fact.plane), width: 6.8 },
    ],
    rows: steps.map(({ words, result }) => [words, result]),
  }))
}

const planeWords = (plane: Plane): string => (plane === 'up' ? 'up and down' : 'to the sides')

/** Two facts a plane: a straight line through them, step by step. */
function lineBlocks(pencil: Pencil, coupling: Coupling, lines: readonly PencilLine[]): Block[] {
  const parts = lines.flatMap((line) => {
    const [fact] = line.facts
    return fact ? [{ fact, steps: lineSteps(pencil, coupling, line) }] : []
  })
  return [
    { kind: 'heading', text: 'The line', aside: 'the right axis against the left one drawn on' },
    ...stepTables(parts),
  ]
}

function lineSteps(
  pencil: Pencil,
  coupling: Coupling,
  { facts, slope, offset, plane }: PencilLine,
): Step[] {
  const { fine, length, lengthUnit, slopeUnit } = pencil
  const [a, b] = facts
  const [first, second] = a?.what === 'offset' ? [a, b] : [b, a]
  if (first?.what !== 'offset' || !second) return []
  const away = coupling.mid - first.x
  return [
    { words: `at x ${length(first.x)} ${lengthUnit}`, result: fine(first.value) },
    ...(second.what === 'offset'
      ? [
          { words: `at x ${length(second.x)} ${lengthUnit}`, result: fine(second.value) },
          { words: 'the second less the first', result: fine(second.value - first.value) },
          {
            words: `over the way between them, ${length(second.x)} \u2212 ${length(first.x)} = ${length(second.x - first.x)}: slope`,
            result: `${pencil.slope(slope)} ${slopeUnit}`,
          },
        ]
      : [{ words: 'slope', result: `${pencil.slope(slope)} ${slopeUnit}` }]),
    {
      words: `from x ${length(first.x)} to the middle of the coupling, x ${length(coupling.mid)}: ${length(away)} times the slope`,
      result: fine(slope * away),
    },
    { words: `added to that at x ${length(first.x)}: in the middle`, result: fine(offset) },
    { words: 'so in the middle the right axis is', result: pencil.stands(plane, offset) },
  ]
}

/** The line read off at the feet of either machine, as if the other one stayed. */
function feetBlocks(train: Train, pencil: Pencil, coupling: Coupling): Block[] {
  const { line } = asFound(coupling)
  const rows = (['right', 'left'] as const).flatMap((side) => {
    const machine = train.machines[coupling[side]]
    const sign = side === 'right' ? 1 : -1
    return (machine?.rows ?? []).map(({ x }) => {
      const arm = x - coupling.mid
      const at = (plane: Plane) =>
        plane === 'up' ? sign * (line.z + line.sz * arm) : sign * (line.y + line.sy * arm)
      return [
        capital(inSentence(machine?.name ?? '')),
        pencil.length(x),
        pencil.length(arm),
        pencil.stands('up', at('up')),
        pencil.stands('side', at('side')),
      ]
    })
  })
  return [
    {
      kind: 'heading',
      text: 'Read off at the feet',
      aside: 'slope times the way from the middle, and the middle added; as found, cold',
    },
    {
      kind: 'table',
      columns: [
        { head: 'axis of', width: 3 },
        { head: `feet at x, ${pencil.lengthUnit}`, width: 1.6, align: 'right' },
        { head: 'from the middle', width: 1.6, align: 'right' },
        { head: 'up and down, against the other axis drawn on', width: 3 },
        { head: 'to the side', width: 4 },
      ],
      rows,
    },
  ]
}
