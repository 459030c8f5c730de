import type { Body, Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { listed } from '../../../language/names'
import { statorAfter } from '../../plan/statorWords'
import { pinsAfter } from '../../../language/pinWords'
import type { StepAnswer } from './answer'
import { beforeMove, tightenWords } from './boltWords'
import { riderDials } from './carried'
import { moveCautions, turnGear } from './cautions'
import { dialsOf, neighbourDials } from './dials'
import { gapsAt } from './gapWords'
import { holdAfter, readHold } from './holdPoints'
import { insteadOf } from './instead'
import { couplingsAt, expectedAt, readingsJudged } from './judge'
import { touchedBy } from './limits'
import { loadsOf } from './loads'
import { scaled } from './moves'
import { endOf, type OrderedAction } from './search'
import { footAnswers, stepWords, type FootPack } from './stepFeet'
import { stepWay } from './stepWay'
import { breakAnswer } from './words'

/** The steps that move something, each body read when it has made all its moves. */
export function movingSteps(
  train: Train,
  found: readonly AsFound[],
  goal: readonly Motion[],
  placed: readonly OrderedAction[],
  packs: readonly FootPack[],
  foundPasses: boolean,
): StepAnswer[] {
  const now: Motion[] = train.bodies.map(() => noMotion)
  const keeping = insteadOf(train, placed, foundPasses)
  return placed.flatMap(({ action, path }, i) => {
    const body = train.bodies[action.body]
    if (!body) return []
    const started = [...now]
    const before = now[action.body] ?? noMotion
    now[action.body] = endOf(now, action)
    const touched = touchedBy(train, action.body)
    const couplings = couplingsAt(train, touched)
    const piece = scaled(action.whole, action.to - action.from)
    const told = footAnswers(body, action, before, packs)
    const known = loadsOf(train, action.body)
    const again = placed.slice(0, i).some((earlier) => earlier.action.body === action.body)
    const more = placed.slice(i + 1).some((next) => next.action.body === action.body)
    const gaps = action.kind === 'axial' ? gapsAt(train, couplings, now) : []
    const hold = holdAfter(train, action, gaps, more)
    const way = stepWay(train, started, action, path, told)
    const { feet, first } = way
    const instead = path.passed.length > 0 ? keeping(i) : undefined
    const breaks = [
      ...(instead
        ? path.passed.map((passed) => breakAnswer(train, action.id, passed, instead))
        : []),
      ...way.breaks,
    ]
    const common = {
      body: body.id,
      expected: expectedAt(train, found, now, couplings),
      judge: readingsJudged(train, now, goal, couplings),
      standing: [{ id: body.id, move: now[action.body] ?? noMotion }],
      provisional: false,
    }
    const step: StepAnswer = {
      id: action.id,
      kind: action.kind,
      feet,
      words: stepWords(train, body, action, feet, first, way.words),
      ...(hold !== undefined && { hold }),
      ...(gaps.length > 0 && { gaps }),
      before: beforeMove(train, body, touched, first, again),
      cautions: moveCautions(
        train,
        body,
        action.kind,
        piece,
        now[action.body] ?? noMotion,
        first,
        known,
      ),
      dials: [
        ...dialsOf(train, body, piece, action.kind, feet),
        ...riderDials(train, action.body, piece, action.kind),
        ...neighbourDials(train, touched, action.kind),
      ],
      poses: way.poses,
      ...(way.stops && { stops: way.stops }),
      ...(action.kind === 'vertical' &&
        'loads' in known && { load: loadAnswer(body, known.loads) }),
      breaks,
      ...common,
    }
    if (more) return [step]
    return [step, readStep(train, body, common, now, i === placed.length - 1)]
  })
}

/** The stop point at which a body that has made all its moves is tightened and read. */
function readStep(
  train: Train,
  body: Body,
  common: Pick<StepAnswer, 'body' | 'expected' | 'judge' | 'standing' | 'provisional'>,
  now: readonly Motion[],
  last: boolean,
): StepAnswer {
  const names = common.judge.map(
    ({ coupling }) => train.couplings.find(({ id }) => id === coupling)?.name ?? coupling,
  )
  const geared = common.judge.some(({ coupling }) => {
    const { left, right } = train.couplings.find(({ id }) => id === coupling) ?? {}
    return [left, right].some((m) => m !== undefined && train.machines[m]?.role === 'gearbox')
  })
  const judged = train.couplings.flatMap(({ id }, c) =>
    common.judge.some((one) => one.coupling === id && one.judge === 'good to judge') ? [c] : [],
  )
  const gaps = gapsAt(train, judged, now)
  return {
    id: `${body.id}:read`,
    kind: 'read',
    feet: [],
    words: [`${tightenWords(train, body)}. Then read ${listed(names)}.`, ...pinsAfter(body)].join(
      ' ',
    ),
    hold: readHold(train, body, gaps, last, statorAfter(train, body.id, now)),
    ...(gaps.length > 0 && { gaps }),
    before: [],
    cautions: [
      'Turn shafts only by agreed signal; one person calls.',
      ...(geared ? [turnGear] : []),
    ],
    dials: [],
    poses: common.standing.map(({ move }) => ({ move, why: 'nothing moves' })),
    breaks: [],
    ...common,
  }
}

function loadAnswer(
  body: Body,
  loads: Extract<ReturnType<typeof loadsOf>, { loads: unknown }>['loads'],
): NonNullable<StepAnswer['load']> {
  const { total, corners, jack, rating, over, assumed } = loads
  return {
    total,
    corners: body.feet.map((foot, f) => ({ foot: foot.id, load: corners[f] ?? 0 })),
    jack,
    ...(rating !== undefined && { rating }),
    over,
    assumed,
  }
}
