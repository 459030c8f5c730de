import type { useHand } from '../../src/app/stores/hand'
import type { useJob } from '../../src/app/stores/job'
import { bodiesAt } from '../../src/document/edits/bodies'
import { addFoot, addRow, asBefore, removeFoot } from '../../src/document/edits/feet'
import { flippedSet } from '../../src/document/edits/flip'
import { copiedGrowth } from '../../src/document/edits/growthEdits'
import {
  addMachine,
  moveMachine,
  removeMachine,
  type NamedEdit,
} from '../../src/document/edits/machines'
import { addToBody, removeFromBody, type BodyList } from '../../src/document/edits/bodyLists'
import { valueAt, withValue, type Path } from '../../src/document/place'
import { readAgain, usedAlone } from '../../src/document/edits/repeats'
import { shiftMachine } from '../../src/document/edits/shiftMachine'
import { addSkid, setOnSkid, removeSkid } from '../../src/document/edits/skids'
import {
  movedState,
  renamedState,
  withoutState,
  withState,
} from '../../src/document/edits/stateEdits'
import type { TrainDocument } from '../../src/document/schema'
import { placeOf } from '../../src/document/refusal'
import type { Random } from '../second/random'

type Job = ReturnType<typeof useJob>
type Hand = ReturnType<typeof useHand>

interface Editor {
  /** Makes one edit of a random kind; it may find nothing to do. */
  readonly make: () => Promise<void>
  /** How often each kind was made. */
  readonly made: ReadonlyMap<string, number>
}

/**
 * Everything that the sheet can do to a job, done at random places.
 * @param stands called when an edit has been made, or with 1 when the next one leaves this on the sheet first
 */
export function editor(
  job: Job,
  hand: Hand,
  random: Random,
  stands: (ahead?: number) => void,
): Editor {
  const now = (): TrainDocument => {
    if (!job.document) throw new Error('no job is open')
    return job.document
  }
  const oneOf = <T>(list: readonly T[]): T | undefined => list[random.whole(0, list.length - 1)]
  const index = (list: readonly unknown[]) => random.whole(0, list.length - 1)
  const body = () => oneOf(bodiesAt(now()))
  const number = () => Number(random.about(1000).toPrecision(6))
  /** A number being typed is one edit until it is left. */
  const key = (path: Path) => (random.chance(0.5) ? placeOf(path) : undefined)
  const make = async (change: NamedEdit) => {
    await job.change(change.name, () => change.document)
  }
  const sets = (): Path[] =>
    now().couplings.flatMap(({ found }, c) => found.map((_, s) => ['couplings', c, 'found', s]))
  const listed = async (name: string, path: Path, list: readonly unknown[]) => {
    await job.change(name, (document) => withValue(document, path, list))
  }

  const addTo = async (list: BodyList) => {
    const one = body()
    if (one) await make(addToBody(now(), one, list, []))
  }
  const takeFrom = async (list: BodyList) => {
    const one = bodiesAt(now()).find(({ path }) => valueAt(now(), [...path, list, 0]))
    if (one) await make(removeFromBody(now(), one, list, 0))
  }

  const kinds: Record<string, () => Promise<void>> = {
    'change a number': async () => {
      const path = oneOf(leaves(now(), 'number'))
      if (path) await job.set(path, number(), `changed ${placeOf(path)}`, key(path))
    },
    'change a text': async () => {
      const path = oneOf(leaves(now(), 'string').filter((at) => at.at(-1) === 'name'))
      if (path) await job.set(path, `name ${random.whole(1, 99)}`, `named ${placeOf(path)}`)
    },
    'take a value away': async () => {
      const path = oneOf(leaves(now(), 'number'))
      if (path) await job.set(path, undefined, `took ${placeOf(path)} away`)
    },
    'type what is no number': async () => {
      const path = oneOf(leaves(now(), 'number'))
      if (!path) return
      await job.mistype(path, '1,2,3', `typed at ${placeOf(path)}`, placeOf(path))
      if (random.chance(0.5)) job.closeEdit()
    },
    'put a wrong entry right': async () => {
      const place = oneOf(Object.keys(job.entries))
      const path = leaves(now(), 'number').find((at) => placeOf(at) === place)
      if (path) await job.set(path, number(), `put ${placeOf(path)} right`, key(path))
    },
    'give up what is being typed': async () => {
      const path = oneOf(leaves(now(), 'number'))
      if (!path) return
      job.closeEdit()
      await job.set(path, number(), `changed ${placeOf(path)}`, placeOf(path))
      await job.giveUp(placeOf(path))
    },
    'leave a cell': () => {
      job.closeEdit()
      return Promise.resolve()
    },
    'hold or let go': async () => {
      const one = body()
      if (one) await job.hold(one.id, !job.held.has(one.id))
    },
    'hold these alone': async () => {
      const ids = bodiesAt(now()).map(({ id }) => id)
      await job.holdOnly(ids.filter(() => random.chance(0.4)))
    },
    'change the share': () => job.setShare(random.whole(10, 100) / 100),
    'switch units': async () => {
      await job.useUnits({
        length: random.pick(['mm', 'in']),
        fine: random.pick(['um', 'mm', 'mil']),
        temperature: random.pick(['C', 'F']),
      })
    },
    'put by hand': () => {
      hand.carry(
        index(now().machines),
        random.pick(['rise', 'side']),
        random.pick(['left', 'both', 'right']),
        number(),
      )
      if (random.chance(0.5)) job.closeEdit()
      return Promise.resolve()
    },
    'back to the best plan': () => {
      hand.backToBest()
      return Promise.resolve()
    },
    'try something and go back': async () => {
      await job.tryOut(withValue(now(), ['plan', 'share'], 0.99))
      await (random.chance(0.5) ? job.undo() : job.endTrial())
    },
    'try something and keep it': async () => {
      await job.tryOut(withValue(now(), ['plan', 'share'], random.between(0.5, 1)))
      job.keepTrial('took the remedy: tried')
    },
    'edit what is being tried': async () => {
      await job.tryOut(withValue(now(), ['plan', 'share'], random.between(0.5, 1)))
      stands(1)
      await job.set(['note'], `note ${random.whole(1, 1e6)}`, 'changed the note')
    },
    'undo and make again': async () => {
      await job.undo()
      await job.redo()
    },
    'undo and go another way': async () => {
      await job.undo()
      await job.set(['note'], `another way ${random.whole(1, 1e6)}`, 'changed the note')
    },
    'put an earlier version back': async () => {
      await job.restore(
        { document: withValue(now(), ['name'], `version ${random.whole(1, 1e6)}`), entries: {} },
        'put an earlier version back',
      )
    },
    'add a machine': () => make(addMachine(now(), random.whole(0, now().machines.length))),
    'take a machine away': async () => {
      if (now().machines.length > 2) await make(removeMachine(now(), index(now().machines)))
    },
    'move a machine in the train': () =>
      make(moveMachine(now(), index(now().machines), index(now().machines))),
    'move a machine along': () => make(shiftMachine(now(), index(now().machines), number())),
    'add a foot': async () => {
      const one = body()
      if (one) await make(random.chance(0.5) ? addFoot(now(), one) : addRow(now(), one, 10, 20))
    },
    'take a foot away': async () => {
      const one = body()
      if (one && one.feet.length > 0) await make(removeFoot(now(), one, index(one.feet)))
    },
    'a foot like the one before': async () => {
      const one = body()
      if (one) await make(asBefore(now(), one, index(one.feet)))
    },
    'add a skid': () => make(addSkid(now())),
    'take a skid away': async () => {
      const { skids = [] } = now()
      if (skids.length > 0) await make(removeSkid(now(), index(skids)))
    },
    'set on a skid': async () => {
      const { skids = [], machines } = now()
      const machine = oneOf(machines)
      if (skids.length > 0 && machine)
        await make(setOnSkid(now(), index(skids), machine.id, random.chance(0.7)))
    },
    'add a nozzle': () => addTo('restraints'),
    'take a nozzle away': () => takeFrom('restraints'),
    'add a dowel': () => addTo('pins'),
    'take a dowel away': () => takeFrom('pins'),
    'add a state': () => job.change('added a state', (was) => withState(was, 'hot')),
    'name a state': () =>
      job.change('named a state', (was) =>
        renamedState(was, index(was.states ?? []), `state ${random.whole(1, 9)}`),
      ),
    'take a state away': () =>
      job.change('removed a state', (was) => withoutState(was, index(was.states ?? []))),
    'move a state': () =>
      job.change('moved a state', (was) => movedState(was, 0, index(was.states ?? []))),
    'copy growth': async () => {
      const [from, to] = [oneOf(now().states ?? []), oneOf(now().states ?? [])]
      if (from && to)
        await job.change('copied growth', (was) =>
          copiedGrowth(was, from.id, to.id, random.between(0.2, 2)),
        )
    },
    'turn readings over': async () => {
      const path = oneOf(sets())
      if (path)
        await listed('turned readings over', path, flippedSet(valueAt(now(), path) as never))
    },
    'read again': async () => {
      const path = oneOf(sets())
      if (!path) return
      const list = valueAt(now(), path.slice(0, -1)) as never[]
      const again = readAgain(list[Number(path.at(-1))] as never)
      const both = [...list, again]
      await listed('read again', path.slice(0, -1), usedAlone(both, both.length - 1))
    },
    'agree to readings': () =>
      job.change('confirmed a sign', (was) =>
        withValue(
          was,
          ['record', 'signs'],
          [
            ...((valueAt(was, ['record', 'signs']) ?? []) as unknown[]),
            {
              coupling: now().couplings[0]?.id ?? '',
              says: 'higher',
              when: '2026-01-01T00:00:00Z',
            },
          ],
        ),
      ),
  }

  const names = Object.keys(kinds)
  const made = new Map(names.map((name) => [name, 0]))
  return {
    made,
    async make() {
      const name = oneOf(names) ?? ''
      const before = [job.document, job.entries, job.hand]
      await kinds[name]?.()
      stands()
      const after = [job.document, job.entries, job.hand]
      const done = after.some((part, i) => part !== before[i]) || unchanging.has(name)
      if (done) made.set(name, (made.get(name) ?? 0) + 1)
    },
  }
}

/** What leaves the sheet as it was, when all is well. */
const unchanging = new Set([
  'leave a cell',
  'undo and make again',
  'try something and go back',
  'give up what is being typed',
])

/** Places of all values of one type. */
function leaves(node: unknown, type: 'number' | 'string', at: Path = []): Path[] {
  if (typeof node === type) return [at]
  if (typeof node !== 'object' || node === null) return []
  return Object.entries(node).flatMap(([key, value]) =>
    leaves(value, type, [...at, Array.isArray(node) ? Number(key) : key]),
  )
}
