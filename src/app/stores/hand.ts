import { bestShareText } from '../../language/roundedAmounts'
import { defineStore } from 'pinia'
import { computed, ref } from 'vue'
import {
  carriedEnd,
  handMotions,
  type HandEnd,
  type HandDirection,
} from '../../engine/studies/hand/handPlan'
import type { FromHere } from '../../engine/studies/hand/fromHere'
import { answerMotions } from '../../scene/axisLines'
import { noMotion } from '../../mechanics/motion'
import { figuresOf, standingFigures } from '../../scene/figures'
import { withStages } from '../../engine/fieldwork/answer'
import { hasMoves } from '../../engine/plan/moves'
import { madeOf } from '../../engine/rounding/answer'
import { displayedPlan, workedSentence } from '../../engine/fieldwork/displayed'
import { inSentence } from '../../language/names'
import type { Drawing } from '../../worker/messages'
import { Analyst } from '../services/analyst'
import { HandDrawing } from './handDrawing'
import { useJob } from './job'
import { usePlan } from './plan'
import { useWork } from './work'

/** Machines put by hand: what the sheet then shows, what it costs against the best plan, and the ways back. */
export const useHand = defineStore('hand', () => {
  const job = useJob()
  const plan = usePlan()
  const work = useWork()
  const says = ref('')
  const asking = ref(false)
  let [asked, askedName] = [0, '']

  const train = computed(() => plan.drawing?.train)
  /** What a drag leaves as it is, worked out once for the train that is dragged. */
  const standing = computed(() => train.value && standingFigures(train.value))

  /** The plan as it is carried out: rounded to the shims of the store, once that is worked out. */
  const displayed = computed<Drawing | undefined>(() => {
    const { drawing: best } = plan
    if (!best || work.behind || !madeOf(work.work?.rounded) || best.answer.status !== 'planned')
      return
    const worked = withStages(best.answer, work.work ?? {})
    const answer = displayedPlan(worked)
    return {
      ...best,
      answer,
      sentence: workedSentence(best.train, worked),
      figures: figuresOf(best.train, answer, standing.value),
    }
  })

  /** What the sheet draws: the plan, or the machines as they were put by hand. */
  const drawing = computed<Drawing | HandDrawing | undefined>(() => {
    const { drawing: best } = plan
    return best && job.hand && standing.value
      ? new HandDrawing(job.hand, best, standing.value)
      : (displayed.value ?? best)
  })

  /** Whether the sheet draws moves: those of a plan, or what was put by hand. */
  const planned = computed(
    () => job.byHand || (plan.drawing !== undefined && hasMoves(plan.drawing.answer)),
  )

  /** Carries an end of a machine's shaft; drags with one key are one edit. */
  function carry(machine: number, way: HandDirection, end: HandEnd, by: number): void {
    const best = plan.drawing
    const body = best?.train.machines[machine]
    if (!best || !body || by === 0) return
    const { train } = best
    const base = job.hand
      ? handMotions(train, job.hand)
      : (answerMotions(train, (displayed.value ?? best).answer) ?? train.bodies.map(() => noMotion))
    const motions = Object.fromEntries(train.bodies.map(({ id }, b) => [id, base[b] ?? noMotion]))
    motions[body.id] = carriedEnd(train, machine, way, end, by, motions[body.id] ?? noMotion)
    const touched = [...new Set([...(job.hand?.touched ?? []), body.id])]
    says.value = ''
    void job.edit(`put ${inSentence(body.name)} by hand`, () => ({ hand: { motions, touched } }), {
      key: `hand ${body.id} ${way} ${end}`,
    })
  }

  /** Leaves what was put by hand where it is and plans the others at their best. */
  function bestFromHere(): void {
    if (!job.hand || !job.document) return
    asking.value = true
    askedName = 'planned the others from here'
    asked = analyst.ask({ kind: 'from here', document: job.document, hand: job.hand })
  }

  /** Puts the plan back on the sheet. */
  function backToBest(): void {
    says.value = ''
    void job.edit('went back to the best plan', () => ({ hand: undefined }))
  }

  const analyst = new Analyst((reply) => {
    if (reply.id !== asked || reply.kind === 'begun') return
    asking.value = false
    if (reply.kind === 'from here') take(reply.from)
    if (reply.kind === 'failed') says.value = `The planner failed: ${reply.why}`
  })

  function take(from: FromHere): void {
    if (!job.hand) return
    if (from.ok) {
      says.value = 'The others now stand where they cost least with yours left as they are.'
      void job.edit(askedName, () => ({ hand: from.hand }))
    } else
      says.value =
        from.floor === undefined
          ? 'The planner stopped without an answer.'
          : `With these left where they are, the best reachable by the others is ${bestShareText(from.floor)} of tolerance.`
  }

  return {
    drawing,
    planned,
    says,
    asking,
    carry,
    bestFromHere,
    backToBest,
  }
})
