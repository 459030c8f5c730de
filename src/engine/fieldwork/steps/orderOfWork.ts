import type { Body, Train } from '../../../mechanics/train'
import type { AsFound } from '../../../mechanics/readings/asFound'
import { noMotion, type Motion } from '../../../mechanics/motion'
import { inSentence, listed } from '../../../language/names'
import { actionsOf, type Action } from './action'
import type { StepAnswer, StepsAnswer } from './answer'
import { beforeAll, moveCautions } from './cautions'
import { riderDials } from './carried'
import { chosenOrder } from './chosenOrder'
import { dialsOf, neighbourDials } from './dials'
import { holdAfter, readHold } from './holdPoints'
import { insteadOf } from './instead'
import { couplingsAt, expectedAt, readingsJudged } from './judge'
import { touchedBy } from './limits'
import { loadsOf } from './loads'
import { scaled } from './moves'
import { endOf, findOrder, walk, type OrderedAction } from './search'
import { softFootSteps, type SoftShim } from './softFoot'
import { bothEndsMove, eachPiece, footAnswers, stepWords, type FootPack } from './stepFeet'
import { breakAnswer, stopWords } from './words'

export interface OrderOptions {
  readonly packs?: readonly FootPack[]
  /** Ids of steps in the order somebody chose; steps left out follow in the order of the rules. */
  readonly order?: readonly string[]
  /** Shims that make feet plane again before anything else. */
  readonly soft?: readonly SoftShim[]
  /** Soft feet are to be seen to first, with shims or in another way: every step after that is provisional. */
  readonly provisional?: boolean
}

/**
 * The order of work: steps with stop points, each tried out where all machines then stand.
 * @param motions own motion of every body that the plan (rounded, where it is) comes to
 * @returns the steps, and every limit that some step passes on the way
 */
export function orderOfWork(
  train: Train,
  found: readonly AsFound[],
  motions: readonly Motion[],
  options: OrderOptions = {},
): StepsAnswer {
  const soft = softFootSteps(train, options.soft ?? [])
  const rules = findOrder(train, actionsOf(train, motions))
  const { actions, unknown } = chosenOrder(rules, options.order ?? [])
  const chosen = actions.some((action, i) => action !== rules[i])
  const placed = walk(train, actions)
  const foundPasses = chosen
    ? walk(train, rules).some(({ path }) => path.passed.length > 0)
    : placed.some(({ path }) => path.passed.length > 0)
  const steps = [
    ...soft,
    ...movingSteps(train, found, motions, placed, options.packs ?? [], foundPasses),
  ].map((step) => ({
    ...step,
    provisional: step.kind !== 'soft foot' && (soft.length > 0 || options.provisional === true),
  }))
  const first = steps[0]
  if (first) first.cautions = [beforeAll, ...first.cautions]
  return {
    steps,
    breaks: steps.flatMap((step) => step.breaks),
    order: actions.map(({ id }) => id),
    chosen,
    found: rules.map(({ id }) => id),
    unknown,
    words: wordsOf(steps, rules, actions),
  }
}

function movingSteps(
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
    const before = now[action.body] ?? noMotion
    now[action.body] = endOf(now, action)
    const touched = touchedBy(train, action.body)
    const couplings = couplingsAt(train, touched)
    const piece = scaled(action.whole, action.to - action.from)
    const feet = footAnswers(body, action, before, packs)
    const known = loadsOf(train, action.body)
    const more = placed.slice(i + 1).some((next) => next.action.body === action.body)
    const hold = holdAfter(train, action, couplings, now, more)
    const instead = path.passed.length > 0 ? keeping(i) : undefined
    const breaks = instead
      ? path.passed.map((passed) => breakAnswer(train, action.id, passed, instead))
      : []
    const each = eachPiece(feet, action, path.stops)
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
      words:
        stepWords(train, body, action, feet, path.first) +
        (action.kind === 'axial'
          ? ''
          : stopWords(train, path, each, bothEndsMove(train, body, action))),
      ...(hold !== undefined && { hold }),
      cautions: moveCautions(
        train,
        body,
        action.kind,
        piece,
        now[action.body] ?? noMotion,
        path,
        known,
      ),
      dials: [
        ...dialsOf(train, body, piece, action.kind, feet),
        ...riderDials(train, action.body, piece, action.kind),
        ...neighbourDials(train, touched, action.kind),
      ],
      ...(action.kind !== 'axial' && {
        stops: { count: path.stops, each, first: path.first },
      }),
      ...(action.kind === 'vertical' &&
        'loads' in known && { load: loadAnswer(body, known.loads) }),
      breaks,
      ...common,
    }
    if (more) return [step]
    return [step, readStep(train, body, common, i === placed.length - 1)]
  })
}

/** The stop point at which a body that has made all its moves is tightened and read. */
function readStep(
  train: Train,
  body: Body,
  common: Pick<StepAnswer, 'body' | 'expected' | 'judge' | 'standing' | 'provisional'>,
  last: boolean,
): StepAnswer {
  const names = common.judge.map(
    ({ coupling }) => train.couplings.find(({ id }) => id === coupling)?.name ?? coupling,
  )
  return {
    id: `${body.id}:read`,
    kind: 'read',
    feet: [],
    words: `Tighten ${inSentence(body.name)} at 30, 70 and 100 % of torque, jackscrews backed off, then read ${listed(names)}.`,
    hold: readHold(train, body, last),
    cautions: ['Turn shafts only by agreed signal; one person calls.'],
    dials: [],
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

function wordsOf(
  steps: readonly StepAnswer[],
  rules: readonly Action[],
  actions: readonly Action[],
): string {
  if (steps.length === 0)
    return 'Nothing needs to move. That is a record too: date it, sign it, keep it with the readings.'
  const breaks = steps.flatMap((step) => step.breaks)
  const portions = rules.some(({ to, from }) => to - from < 1)
  const chosen = actions.some((action, i) => action !== rules[i])
  const first = chosen
    ? 'In the order chosen.'
    : 'Axial first, then the skid, then outward from what stays; each machine up and down before sideways.'
  const cut = portions
    ? ' Some moves are cut into portions that take turns, since no order of whole moves keeps every limit.'
    : ''
  const kept =
    breaks.length === 0
      ? ' Every step was tried out where all machines then stand and keeps every limit entered.'
      : ` ${breaks.length === 1 ? 'One limit is' : `${breaks.length} limits are`} passed on the way: see the steps.`
  return first + cut + kept
}
