import type { FittedSuspect, WalkedMachine, Since } from '../engine/fieldwork/since/since'
import { movedAt, placesAt, sinceWords } from '../engine/fieldwork/since/sinceWords'
import type { Body, Train } from '../mechanics/train'
import { written } from './written'

/** What changed since a train was last read, in the document's units; see `answers.md`. */
export function sinceJson(train: Train, since: Since) {
  const { changes, differs, causes, places } = since
  const words = sinceWords(train, since)
  const answer = {
    differs,
    couplings: changes.map(({ coupling, change, covariance }) => {
      const u = (k: number) => Math.sqrt(Math.max(0, covariance[k]?.[k] ?? 0))
      return {
        coupling: train.couplings[coupling]?.id ?? '',
        offset: { y: change.y, z: change.z },
        slope: { y: change.sy, z: change.sz },
        u: { offset: { y: u(0), z: u(2) }, slope: { y: u(1), z: u(3) } },
      }
    }),
    causes: causes.map((cause, i) => ({
      ...whereOf(train, cause),
      odds: cause.odds,
      explains: cause.explains,
      words: words.causes[i] ?? '',
    })),
    stayed: train.bodies[places.stayed]?.id ?? '',
    places: places.moved.flatMap((moved) => {
      const body = train.bodies[moved.body]
      return body ? rowsOf(body, moved) : []
    }),
    words: words.headline,
  }
  const line = { offset: { y: 'fine', z: 'fine' }, slope: { y: 'plain', z: 'plain' } } as const
  return written(
    answer,
    {
      couplings: { ...line, u: line },
      causes: { odds: 'plain' },
      places: {
        x: 'length',
        rise: 'fine',
        side: 'fine',
        u: { rise: 'fine', side: 'fine' },
      },
    },
    train.units,
  )
}

/** Which machine, which coupling, or the base under all. */
function whereOf(train: Train, { suspect }: FittedSuspect) {
  switch (suspect.kind) {
    case 'body':
      return { kind: suspect.kind, body: train.bodies[suspect.body]?.id ?? '' }
    case 'readings':
      return { kind: suspect.kind, coupling: train.couplings[suspect.coupling]?.id ?? '' }
    case 'base':
    case 'nothing':
      return { kind: suspect.kind }
  }
}

const rowsOf = (body: Body, moved: WalkedMachine) =>
  placesAt(body).map(({ x }) => {
    const { rise, side } = movedAt(body, moved, x)
    return { body: body.id, x, rise: rise.by, side: side.by, u: { rise: rise.u, side: side.u } }
  })
