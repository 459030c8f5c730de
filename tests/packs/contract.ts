import type { AnswerJson } from '../../src/json/answerJson'
import { fineFactor } from '../second/train'
import type { Shimmed } from './shimmed'
import { everySum, whole } from './store'

/**
 * What the output contract says of `packs`, checked on an answer from the document alone: one row a
 * foot that changes, whole steps, plates of the stock, few enough, adding up, limits kept.
 */
export function contractFaults(train: Shimmed, answer: AnswerJson): string[] {
  const faults: string[] = []
  const { packs, rounded } = answer
  const fine = fineFactor(train)
  const { step, stock, most = 4, rebuild = false } = train.plan.shims
  const size = whole(step * fine)
  const plates = stock.map((t) => whole(t * fine))
  const sums = everySum(plates, most)
  const bodies = [...train.machines, ...(train.skids ?? [])]
  for (const { body: id, foot: f, change, packAfter, out, use } of packs ?? []) {
    const at = `${id} ${f}`
    const body = bodies.find((one) => one.id === id)
    const foot = body?.feet.find((one) => one.id === f)
    if (!body || !foot) {
      faults.push(`${at}: no such foot`)
      continue
    }
    if (body.held === true || body.anchored !== undefined) faults.push(`${at}: held`)
    if (body.free?.shim === false || foot.free?.shim === false) faults.push(`${at}: not shimmed`)
    const pack = foot.pack && {
      now: whole(foot.pack.now * fine),
      min: whole((foot.pack.min ?? 0) * fine),
      max: foot.pack.max === undefined ? Infinity : whole(foot.pack.max * fine),
    }
    const by = whole(change * fine)
    if (by === 0) faults.push(`${at}: a row without a change`)
    if ((pack === undefined) !== (packAfter === undefined)) faults.push(`${at}: pack after`)
    const after = packAfter === undefined ? undefined : whole(packAfter * fine)
    if (pack && after !== undefined) {
      if (Math.abs(pack.now + by - after) > 1) faults.push(`${at}: now + change is not after`)
      if (after < Math.min(pack.min, pack.now) - 1) faults.push(`${at}: under its minimum`)
      if (after > Math.max(pack.max, pack.now) + 1) faults.push(`${at}: over its maximum`)
    }
    if (foot.lift !== undefined && by > Math.max(0, whole(foot.lift * fine)) + 1)
      faults.push(`${at}: over its lift`)
    const anew = rebuild && after !== undefined
    const steps = anew && pack && pack.now % size !== 0 ? after : by
    if (steps % size !== 0) faults.push(`${at}: ${steps / 100} um is no whole number of steps`)
    const total = use.reduce((all, plate) => all + whole(plate * fine), 0)
    const taken = out.reduce((all, plate) => all + whole(plate * fine), 0)
    if (Math.abs(total - taken - by) > 1) faults.push(`${at}: in less out is not the change`)
    if (pack && taken > pack.now + 1) faults.push(`${at}: more out than there is`)
    const lies = foot.pack?.plates?.map((t) => whole(t * fine))
    for (const plate of lies ? out : []) {
      const lying = lies?.indexOf(whole(plate * fine)) ?? -1
      if (lying < 0) faults.push(`${at}: ${plate} comes out and does not lie there`)
      else lies?.splice(lying, 1)
    }
    for (const plate of use)
      if (!plates.includes(whole(plate * fine))) faults.push(`${at}: ${plate} is not in the stock`)
    // what comes out of a pack may be made up for, and then its plates are those that differ
    const wanted = anew ? after : by > 0 && taken === 0 ? by : by + taken
    if (by > 0 && !anew && lies === undefined && taken !== 0)
      faults.push(`${at}: out, and in again`)
    if (by < 0 && !anew && sums.has(-by) && lies === undefined && total !== 0)
      faults.push(`${at}: in, although what comes out would do`)
    if (Math.abs(total - wanted) > 1)
      faults.push(`${at}: plates make ${total / 100}, not ${wanted / 100} um`)
    if (use.length > most) faults.push(`${at}: ${use.length} plates`)
    if (wanted > 0 && use.length !== sums.get(wanted)) faults.push(`${at}: not the fewest plates`)
  }
  // what the rounded feet say is what the packs say, and rows of a body that does not roll change alike
  for (const foot of packs && rounded ? rounded.feet : []) {
    const row = packs?.find((pack) => pack.body === foot.body && pack.foot === foot.foot)
    if (Math.abs((row?.change ?? 0) - foot.shim) * fine > 1e-6) faults.push(`${foot.foot}: shim`)
  }
  for (const body of bodies)
    if (packs && body.free?.roll !== true)
      for (const foot of body.feet)
        for (const other of body.feet) {
          const of = (id: string) =>
            packs.find((pack) => pack.body === body.id && pack.foot === id)?.change ?? 0
          if (
            Math.abs(foot.x - other.x) < 1e-6 &&
            Math.abs(of(foot.id) - of(other.id)) * fine > 1e-6
          )
            faults.push(`${body.id} ${foot.id} and ${other.id} stand in one row`)
        }
  return faults
}
