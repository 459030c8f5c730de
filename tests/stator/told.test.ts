import { expect, it } from 'vitest'
import { glpkSolver } from '../../src/solvers/glpk'
import { counted } from '../counts'
import { planTrain } from '../planned'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'
import type { Train } from '../second/train'

const solver = await glpkSolver()
const start = Number(process.env['HOLDFAST_SEED'] ?? 71_000)
const wanted = counted(6, 100)

interface Across {
  readonly y: number
  readonly z: number
}

/** Micrometres of one of the document's fine units, and millimetres of one of its lengths. */
const perFine = { um: 1, mm: 1000, mil: 25.4 } as const
const perLength = { mm: 1, in: 25.4 } as const
const ways = { top: [0, 1], three: [1, 0], bottom: [0, -1], nine: [-1, 0] } as const

/** Distances (um) from a round rotor to a round bore around it, by plain geometry of circles. */
function around(bore: Across, rotor: Across, mean: number): Record<keyof typeof ways, number> {
  const radius = 4e5
  const [ey, ez] = [bore.y - rotor.y, bore.z - rotor.z]
  const to = ([uy, uz]: readonly [number, number]) => {
    const along = ey * uy + ez * uz
    return along + Math.sqrt((radius + mean) ** 2 - ey ** 2 - ez ** 2 + along ** 2) - radius
  }
  return { top: to(ways.top), three: to(ways.three), bottom: to(ways.bottom), nine: to(ways.nine) }
}

/** A line through values at two places. */
const line =
  (x1: number, a: Across, x2: number, b: Across) =>
  (x: number): Across => ({
    y: a.y + ((b.y - a.y) * (x - x1)) / (x2 - x1),
    z: a.z + ((b.z - a.z) * (x - x1)) / (x2 - x1),
  })

const told =
  /([sS])tator feet (\S+) and (\S+): (pack stays|(put in|take out) ([\d.]+) \S+), (no slide|slide ([\d.]+) \S+ (toward .+?))(?=[;.] )/g
const then = /(?:off by|leaves) up to (\d+) % at one and up to (\d+) % at two/

/** A stator around the rotor of a machine, its bore and its gaps drawn; x in the document's lengths. */
function stators(file: Train, machine: number, random: Random) {
  const body = file.machines[machine]
  if (!body) throw new Error('no machine')
  const length = perLength[file.units.length]
  const fine = perFine[file.units.fine]
  const xs = body.feet.map(({ x }) => x)
  const [low, high] = [Math.min(...xs), Math.max(...xs)]
  const at = (part: number) => low + (high - low) * part
  const places = [at(0.3), at(0.7)] as const
  const mean = random.scale(1500, 12_000)
  const drawn = () => ({
    y: random.between(-0.03, 0.03) * mean,
    z: random.between(-0.03, 0.03) * mean,
  })
  const bores = [drawn(), drawn()] as const
  const feet = [at(0.2), at(0.2), at(0.85), at(0.85)]
  const stator = {
    limit: 0.005,
    airGaps: places.map((x, i) => {
      const gaps = around(bores[i] ?? bores[0], { y: 0, z: 0 }, mean)
      const typed = Object.entries(gaps).map(([key, value]) => [key, value / fine] as const)
      return { id: i === 0 ? 'one' : 'two', at: x, ...Object.fromEntries(typed) }
    }),
    feet: feet.map((x, i) => ({ id: `s${i}`, x })),
  }
  const bore = line(places[0] * length, bores[0], places[1] * length, bores[1])
  return {
    stator,
    places: places.map((x) => x * length),
    feet: feet.map((x) => x * length),
    bore,
    mean,
  }
}

it(`what is told of a stator centres it, measured anew by circles, on ${wanted} random trains`, () => {
  const wrong: string[] = []
  let trains = 0
  for (let seed = start; trains < wanted; seed++) {
    const file = randomTrain(seed)
    const first = planTrain(file, solver, { reasons: false, prices: false })
    if ('refused' in first || first.status !== 'planned') continue
    const moved = first.bodies?.find(
      ({ id, move }) =>
        (file.machines.find((one) => one.id === id)?.feet.length ?? 0) > 3 &&
        Math.abs(move.sz) > 1e-3,
    )
    const m = file.machines.findIndex(({ id, axis }) => id === moved?.id && !('left' in axis))
    if (m < 0) continue
    const { stator, places, feet, bore, mean } = stators(file, m, new Random(seed))
    const machines = file.machines.map((one, i) => (i === m ? { ...one, stator } : one))
    const answer = planTrain({ ...file, machines }, solver, {
      reasons: false,
      prices: false,
      packs: true,
    })
    if ('refused' in answer) throw new Error(JSON.stringify(answer.refused))
    if (answer.status !== 'planned') throw new Error(answer.status)
    const body = file.machines[m]
    const shown = answer.rounded && 'bodies' in answer.rounded ? answer.rounded : answer
    const move = shown.bodies?.find(({ id }) => id === body?.id)?.move
    const hold = answer.steps?.steps.findLast(
      ({ body: of, kind }) => of === body?.id && kind === 'read',
    )?.hold
    if (!body || !move || hold === undefined) continue
    if (!hold.includes('the stator goes too')) continue
    trains += 1
    const fine = perFine[file.units.fine]
    const length = perLength[file.units.length]
    const rows = [...hold.matchAll(told)].map(
      ([, , a = '', , , verb, shim = '0', , slide = '0', side]) => ({
        x: feet[Number(a.slice(1))] ?? NaN,
        z: (verb === 'take out' ? -1 : 1) * Number(shim) * fine,
        y: (side === "toward 3 o'clock" ? 1 : -1) * Number(slide) * fine,
      }),
    )
    const [left = rows[0], right = rows[0]] = rows
    if (!left || !right) throw new Error(`seed ${seed}: ${hold}`)
    const goes = line(left.x, left, right.x, right)
    const x0 = (body.feet.reduce((sum, foot) => sum + foot.x, 0) / body.feet.length) * length
    const { axis } = body
    if ('left' in axis) continue
    const rotor = (x: number): Across => ({
      y: move.ty * fine + move.sy * (x - x0) - move.roll * axis.z * length,
      z: move.tz * fine + move.sz * (x - x0) + move.roll * (axis.y ?? 0) * length,
    })
    const said = then.exec(hold)?.slice(1).map(Number) ?? []
    places.forEach((x, i) => {
      const [b, g, r] = [bore(x), goes(x), rotor(x)]
      const gaps = Object.values(around({ y: b.y + g.y, z: b.z + g.z }, r, mean))
      const middle = gaps.reduce((sum, gap) => sum + gap, 0) / 4
      const part = Math.max(...gaps.map((gap) => Math.abs(gap - middle))) / middle
      // slides are told to a digit: half of one, carried on beyond the feet
      const digits = (fine * (file.units.fine === 'um' ? 0.5 : 0.05)) / middle
      const percent = (said[i] ?? NaN) / 100
      if (!(part < percent + 2 * digits + 1e-4))
        wrong.push(`seed ${seed}, ${i}: ${part} of ${percent}; ${hold}`)
      // and it is no more than a percent too cautious
      if (!(part > percent - 0.0101 - 2 * digits))
        wrong.push(`seed ${seed}, ${i}: only ${part} of ${percent}; ${hold}`)
    })
  }
  expect(wrong).toEqual([])
})
