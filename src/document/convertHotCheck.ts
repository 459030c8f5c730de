import type { HotCheck, HotCoupling, MovedMachine } from '../mechanics/hotCheck'
import { convertPoint } from './convertBody'
import { convertSet } from './convertCoupling'
import type { HotCheckDocument, TrainDocument } from './schema'

type HotCouplingDocument = NonNullable<HotCheckDocument['couplings']>[number]
type MovedDocument = NonNullable<HotCheckDocument['moved']>[number]

/** A hot check as the engine has it, from a document in engine units; machines, couplings and states are found by id. */
export function convertHotCheck(
  check: HotCheckDocument,
  index: number,
  document: TrainDocument,
): HotCheck {
  const place = `hotChecks[${index}]`
  const { id, name, use = true, when, by, datum } = check
  const machine = (wanted: string) => document.machines.findIndex((one) => one.id === wanted)
  return {
    id,
    name: name ?? `hot check ${index + 1}`,
    place,
    state: (document.states ?? []).findIndex((state) => state.id === check.state),
    used: use,
    ...(when !== undefined && { when }),
    ...(by !== undefined && { by }),
    ...(datum !== undefined && { datum: machine(datum) }),
    couplings: (check.couplings ?? []).map((one, i) =>
      convertRead(one, `${place}.couplings[${i}]`, document),
    ),
    moved: (check.moved ?? []).map((one) => convertMoved(one, machine(one.machine), check)),
  }
}

function convertRead(
  { coupling, decay, times }: HotCouplingDocument,
  place: string,
  document: TrainDocument,
): HotCoupling {
  return {
    coupling: document.couplings.findIndex(({ id }) => id === coupling),
    ...(decay && { decay: { time: decay.time, ...(decay.u !== undefined && { u: decay.u }) } }),
    times: times
      .map(({ after, found }, t) => {
        const at = `${place}.times[${t}]`
        return {
          place: at,
          after,
          found: found.map((set, i) => convertSet(set, `${at}.found[${i}]`)),
        }
      })
      .sort((a, b) => a.after - b.after),
  }
}

/** Points of a hot check are measured growth, with its date and person. */
const convertMoved = (
  { against, points }: MovedDocument,
  machine: number,
  { when, by }: HotCheckDocument,
): MovedMachine => ({
  machine,
  ...(against !== undefined && { against }),
  points: points.map((point) => convertPoint({ ...point, source: 'measured', when, by })),
})
