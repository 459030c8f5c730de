import { counted } from '../../language/names'
import type { ReadyItem, ReadyWhat } from './ready/answer'
import type { Instruction } from './steps/instructions'

/** Where the work stands on one thing: done, the next one to do, open though not next, or waiting for what comes before. */
export type WorkState = 'done' | 'next' | 'open' | 'waits'

/** The same as people read it. */
export const workStateWords: Record<WorkState, string> = {
  done: 'done',
  next: 'next',
  open: 'to do',
  waits: 'waits',
}

/** One thing of the whole job, from the checks before moving to the record of how the train is left. */
export interface WorkItem {
  readonly what: ReadyWhat | 'as found' | 'step' | 'read again' | 'as left'
  readonly state: WorkState
  readonly words: string
  /** Id of a step. */
  readonly step?: string
  /** Id of the body or coupling at which a check is open first. */
  readonly where?: string
}

/** What of the job is done so far. */
export interface WorkDoneSoFar {
  readonly ready: readonly ReadyItem[]
  readonly instructions: readonly Pick<Instruction, 'id' | 'number' | 'name' | 'short'>[]
  readonly isDone: (step: string) => boolean
  /** Sets that were read again, and all that are to be. */
  readonly again: { readonly read: number; readonly of: number }
  /** Kinds of the pages of the record, in order. */
  readonly pages: readonly string[]
}

const checks: readonly (readonly [what: ReadyWhat, name: string, open: string])[] = [
  ['signs', 'What the readings mean', 'confirmed'],
  ['soft foot', 'Soft foot', 'in'],
  ['pipe strain', 'Pipe strain', 'in'],
  ['closure', 'Dial sum check', 'in'],
  ['hot check', 'Hot check', 'in'],
]

/**
 * The whole job as one list in the order in which it is done. A check may be made at any time, so that any that is
 * missing is open; a step waits until every check is in or accepted without; what comes after waits for the steps.
 */
export function workList({ ready, instructions, isDone, again, pages }: WorkDoneSoFar): WorkItem[] {
  const open = (item: ReadyItem) => item.state === 'missing' || item.state === 'bad'
  const before = checks.flatMap(([what, name, word]): WorkItem[] => {
    const all = ready.filter((item) => item.what === what)
    if (all.length === 0) return []
    const first = all.find(open)
    const in_ = all.filter((item) => !open(item)).length
    return [
      {
        what,
        state: first ? 'open' : 'done',
        words: `${name}: ${in_} of ${all.length} ${word}`,
        ...(first && { where: first.where }),
      },
    ]
  })
  const found: WorkItem = {
    what: 'as found',
    state: pages.includes('as found') ? 'done' : 'open',
    words: 'How the train was found, written down',
  }
  const blocked = ready.some(open)
  const steps = instructions.map(({ id, number, name, short }): WorkItem => ({
    what: 'step',
    step: id,
    state: isDone(id) ? 'done' : blocked ? 'waits' : 'open',
    words: `Step ${number}. ${name}: ${short}`,
  }))
  const left = steps.some(({ state }) => state !== 'done')
  const after: WorkItem[] = [
    ...(instructions.length === 0
      ? []
      : [
          {
            what: 'read again' as const,
            state: left
              ? ('waits' as const)
              : isWhole(again)
                ? ('done' as const)
                : ('open' as const),
            words: `The couplings read again: ${again.read} of ${counted(again.of, 'set', 'sets')}`,
          },
        ]),
    {
      what: 'as left',
      state:
        pages.includes('as left') || pages.includes('nothing moved')
          ? 'done'
          : left
            ? 'waits'
            : 'open',
      words: 'How the train is left, written down',
    },
  ]
  const list = [...before, found, ...steps, ...after]
  const next = list.findIndex(({ state }) => state === 'open')
  return list.map((item, i) => (i === next ? { ...item, state: 'next' } : item))
}

const isWhole = ({ read, of }: WorkDoneSoFar['again']): boolean => of > 0 && read === of
