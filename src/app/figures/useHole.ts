import { computed, type ComputedRef } from 'vue'
import { saidBody, numberAt, type BodyAt } from '../../document/edits/bodies'
import { holeRoom, holeStep, type HoleEntry, type HoleRoom } from '../../document/edits/holeRoom'
import { fineSaid } from '../../document/said'
import { towardSide } from '../../language/sides'
import { valueAt, withValue, type Path } from '../../document/place'
import { useJob } from '../stores/job'

/** A hole of the document as something that is moved and widened; every change is a part of one edit. */
export interface HoleHand {
  readonly name: ComputedRef<string>
  readonly hole: ComputedRef<HoleEntry>
  readonly entered: ComputedRef<boolean>
  readonly reserve: ComputedRef<number>
  readonly room: ComputedRef<HoleRoom>
  readonly step: ComputedRef<number>
  readonly words: ComputedRef<string>
  move: (x: number, y: number) => void
  widen: (clearance: number) => void
}

export function useHole(body: () => BodyAt, index: () => number): HoleHand {
  const job = useJob()
  const path = computed<Path>(() => [...body().path, 'feet', index(), 'hole'])
  const name = computed(() => `${saidBody(body().name)} foot ${body().feet[index()]?.id ?? ''}`)
  const number = (key: string): number => numberAt(job.document, [...path.value, key]) ?? 0
  const hole = computed(() => ({ clearance: number('clearance'), x: number('x'), y: number('y') }))
  const entered = computed(() => valueAt(job.document, [...path.value, 'clearance']) !== undefined)
  const reserve = computed(() => numberAt(job.document, ['plan', 'reserve']) ?? 0)
  const room = computed(() => holeRoom(hole.value, reserve.value))
  const step = computed(() => (job.document ? holeStep(job.document) : 1))

  const words = computed(() => {
    const now = job.document
    if (!now || !entered.value) return 'No clearance entered: drag the rim outward, or type it.'
    const fine = (value: number) => fineSaid(Number(value.toPrecision(3)), job.units)
    const { three, nine, left, right, over } = room.value
    const kept = reserve.value > 0 ? ` and keep ${fine(reserve.value)} of room` : ''
    if (over)
      return reserve.value > 0
        ? `Less than the ${fine(reserve.value)} to be kept is left between bolt and hole.`
        : 'The bolt lies outside its hole: one of the two figures is wrong.'
    return (
      `From here the foot can go ${fine(nine)} ${towardSide(now, -1)}, ${fine(three)} ${towardSide(now, 1)}, ` +
      `${fine(left)} to the left end and ${fine(right)} to the right end${kept}.`
    )
  })

  function write(what: string, values: Readonly<Record<string, number>>): void {
    void job.change(
      `${what} ${name.value}`,
      (now) =>
        Object.entries(values).reduce(
          (next, [key, value]) => withValue(next, [...path.value, key], value),
          now,
        ),
      `${path.value.join('.')} ${what}`,
    )
  }

  return {
    ...{ name, hole, entered, reserve, room, step, words },
    move: (x, y) => {
      write('moved the hole of', { x, y })
    },
    widen: (clearance) => {
      write('changed the clearance of the hole of', { clearance: Math.max(0, clearance) })
    },
  }
}
