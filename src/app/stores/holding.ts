import type { TrainDocument } from '../../document/schema'

interface Bodylike {
  readonly id: string
  readonly held?: boolean | undefined
  readonly anchored?: string | undefined
}

const bodiesOf = (
  document: TrainDocument | undefined,
): readonly (Bodylike & { name: string })[] => [
  ...(document?.machines ?? []),
  ...(document?.skids ?? []),
]

/** What of a document is held, and the same document with something else held. */
export const heldBodies = {
  heldOf: (document: TrainDocument | undefined): ReadonlySet<string> =>
    new Set(
      bodiesOf(document)
        .filter((body) => body.held === true || body.anchored !== undefined)
        .map(({ id }) => id),
    ),

  nameOf: (document: TrainDocument | undefined, id: string): string =>
    bodiesOf(document).find((body) => body.id === id)?.name ?? id,

  /** `whether` answers undefined for a body that stays as it is. */
  set(
    document: TrainDocument,
    whether: (id: string, anchored: boolean) => boolean | undefined,
  ): TrainDocument {
    const each = <T extends Bodylike>(bodies: T[]): T[] =>
      bodies.map((one) => {
        const held = whether(one.id, one.anchored !== undefined)
        return held === undefined ? one : { ...one, held }
      })
    return {
      ...document,
      machines: each(document.machines),
      ...(document.skids && { skids: each(document.skids) }),
    }
  },
}
