import { resolve } from 'node:path'

/** What a bundler knows of a module. */
interface Known {
  readonly importedIds: readonly string[]
  readonly dynamicallyImportedIds: readonly string[]
}
type Look = (id: string) => Known | null

const page = resolve('src/app/main.ts')
const planner = resolve('src/worker/planner.worker.ts')
const others = ['src/app/shelf/keep.worker.ts', 'src/worker/paper.worker.ts'].map((file) =>
  resolve(file),
)

/** The modules that are loaded with some, and where `later` also those that these fetch afterwards. */
function reached(from: readonly string[], look: Look, later: boolean): Set<string> {
  const seen = new Set<string>()
  const rest = [...from]
  for (let id = rest.pop(); id !== undefined; id = rest.pop()) {
    if (seen.has(id)) continue
    seen.add(id)
    const known = look(id)
    rest.push(
      ...(known?.importedIds ?? []),
      ...(later ? (known?.dynamicallyImportedIds ?? []) : []),
    )
  }
  return seen
}

/**
 * Names the chunk of each module that the first plan needs: few and large ones are sent smaller than many small ones. What
 * the page shares with any worker is one chunk, apart from what the page alone needs, which a worker cannot run.
 * @returns undefined for all else, which is parted as usual
 */
export function firstChunks(): (
  id: string,
  context: { getModuleInfo: Look },
) => string | undefined {
  let sets: { page: Set<string>; planner: Set<string>; workers: Set<string> } | undefined
  return (id, context) => {
    const getModuleInfo: Look = (one) => context.getModuleInfo(one)
    sets ??= {
      page: reached([page], getModuleInfo, false),
      planner: reached([planner], getModuleInfo, false),
      workers: reached([planner, ...others], getModuleInfo, true),
    }
    if (id === page || id === planner || others.includes(id)) return undefined
    const ofPage = sets.page.has(id)
    if (ofPage && sets.workers.has(id)) return 'both'
    if (ofPage) return 'page'
    return sets.planner.has(id) ? 'planner' : undefined
  }
}
