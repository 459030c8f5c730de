import type { Micrometres } from '../../mechanics/units'
import type { Foot } from '../../mechanics/train'
import { knownPlates, subsets } from './knownPlates'
import { micrometres, nanometres, type Nanometres, type Plates } from './plates'
import { isRebuilt, type ShimSettings } from './shims'

/** What is done to one pack: what comes out and what goes in (um), thickest first; in less out is the change. */
export interface Exchange {
  /** Plates by name where those that lie there are known, else one thickness. */
  readonly out: readonly Micrometres[]
  readonly use: readonly Micrometres[]
}

/**
 * How hands make a change: what goes in comes from the store, what comes out can lie there. Nothing comes
 * out of a pack that gets thicker, where plates on top will do.
 */
export function exchange(
  shims: ShimSettings,
  plates: Plates,
  foot: Foot,
  change: Micrometres,
): Exchange {
  const known = knownPlates(foot)
  const now = foot.pack?.now
  if (now !== undefined && isRebuilt(shims, foot))
    return {
      out: known?.map(micrometres) ?? [now].filter((thickness) => thickness > 0),
      use: plates.fewest(now + change) ?? [],
    }
  const onTop = change > 0 ? plates.fewest(change) : undefined
  if (onTop) return { out: [], use: onTop }
  if (known) return swapped(plates, known, change)
  return blind(plates, now, -change)
}

/** Of the plates that lie there those that come out, for the fewest that go in, then the fewest that come out. */
function swapped(plates: Plates, known: readonly Nanometres[], change: Micrometres): Exchange {
  let best: { use: readonly Micrometres[]; out: readonly Nanometres[] } | undefined
  for (const [sum, out] of subsets(known)) {
    const use = plates.fewest(change + micrometres(sum))
    if (!use) continue
    const by = best ? use.length - best.use.length || out.length - best.out.length : -1
    if (by < 0) best = { use, out }
  }
  return { out: best?.out.map(micrometres) ?? [], use: best?.use ?? [] }
}

/**
 * A pack whose plates are not known gives up what plates of the store could make, with the fewest plates
 * put in for it; else it is made anew; else no less comes out than the thinnest plate of the store.
 * @param less what the pack is to be thinner by (um, above 0)
 */
function blind(plates: Plates, now: Micrometres | undefined, less: Micrometres): Exchange {
  const plain: Exchange = { out: [less], use: [] }
  const by = nanometres(less)
  const most = now === undefined ? Infinity : nanometres(now)
  if (by >= most || plates.pieces(by) !== undefined) return plain
  let best: { use: Nanometres; pieces: number } | undefined
  for (const use of plates.sums) {
    if (use + by > most) break
    const [into, out] = [plates.pieces(use), plates.pieces(use + by)]
    if (into === undefined || out === undefined) continue
    if (!best || into + out < best.pieces) best = { use, pieces: into + out }
  }
  const put = (use: Nanometres): Exchange => ({
    out: [micrometres(use + by)],
    use: plates.fewest(micrometres(use)) ?? [],
  })
  if (best) return put(best.use)
  const anew = now === undefined ? undefined : plates.fewest(now - less)
  if (now !== undefined && anew) return { out: [now], use: anew }
  const [thinnest] = plates.sums
  if (thinnest === undefined || by >= thinnest || thinnest + by > most) return plain
  return put(thinnest)
}
