import type { Look, Mark } from './drawings/marks'

/** Marks of one look as a single path. */
export interface MergedPath {
  readonly look: Look
  readonly d: string
  readonly dash?: string
}

/** Looks that are lines of one ink, or hatched: drawn together or one by one, in whatever order, they look the same. */
const lines = new Set<Look>([
  ...(['edge', 'outline', 'grid', 'zero', 'found', 'planned', 'state', 'gate', 'hatch'] as const),
  ...(['before', 'after', 'reserve', 'leader'] as const),
])

/** Circles are drawn as two arcs, so that a list is of one kind. */
const pathOf = (mark: Mark): string =>
  mark.kind === 'path'
    ? mark.d
    : `M${mark.x - mark.r} ${mark.y}a${mark.r} ${mark.r} 0 1 0 ${2 * mark.r} 0a${mark.r} ${mark.r} 0 1 0 ${-2 * mark.r} 0Z`

/**
 * The marks as few paths: lines of one look and dash are one path, as long as nothing filled lies between.
 * A page with fewer elements is drawn faster.
 */
export function merged(marks: readonly Mark[]): MergedPath[] {
  const paths: MergedPath[] = []
  let open = new Map<string, number>()
  for (const mark of marks) {
    const { look } = mark
    const dash = mark.kind === 'path' ? mark.dash : undefined
    const d = pathOf(mark)
    if (!lines.has(look)) open = new Map()
    const key = `${look} ${dash ?? ''}`
    const at = open.get(key)
    const before = at === undefined ? undefined : paths[at]
    if (at !== undefined && before) paths[at] = { ...before, d: before.d + d }
    else {
      if (lines.has(look)) open.set(key, paths.length)
      paths.push({ look, d, ...(dash !== undefined && { dash }) })
    }
  }
  return paths
}
