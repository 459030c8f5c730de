import type { Outage } from '../mechanics/outage'
import { convertSet } from './convertCoupling'
import { sealOfOutage } from './outageSeal'
import type { OutageDocument } from './schema'

/** An outage as the engine has it, from a document in engine units. */
export function convertOutage(outage: OutageDocument, index: number): Outage {
  const place = `outages[${index}]`
  const { id, name, when, couplings, seal } = outage
  return {
    id,
    name: name ?? when,
    place,
    when,
    ...(seal !== undefined && { sealed: sealOfOutage(outage) === seal }),
    couplings: couplings.map(({ coupling, planes: [p, q], found, left }, c) => {
      const at = `${place}.couplings[${c}]`
      const sets = (list: typeof found, time: string) =>
        list?.map((set, i) => convertSet(set, `${at}.${time}[${i}]`))
      const [opened, closed] = [sets(found, 'found'), sets(left, 'left')]
      return {
        coupling,
        place: at,
        p,
        q,
        ...(opened && { found: opened }),
        ...(closed && { left: closed }),
      }
    }),
  }
}
