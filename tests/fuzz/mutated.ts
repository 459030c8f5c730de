import type { Random } from '../second/random'

/** A place of a document: what holds it, and its key there. */
interface Spot {
  readonly holder: Record<string, unknown> | unknown[]
  readonly key: string | number
  readonly value: unknown
}

/** Numbers at the edges of what is read, of what a computer holds, and of what the trade has. */
const numbers: readonly [number, ...number[]] = [
  ...([
    0, -0, 1, -1, 0.5, 12, 100, 1000, 1e6, -1e6, 999_999.999, 1e9, 1e15, 1e300, -1e300,
  ] as const),
  ...[1e-3, 1e-6, 1e-9, 1e-12, 1e-15, 1e-300, 5e-324, -5e-324, 2 ** 53, 0.1 + 0.2, 1 + 2 ** -52],
  ...[Number.MAX_VALUE, Number.MIN_VALUE, 4_294_967_295, 4_294_967_296, 39_370, 39_370.1],
]
const factors: readonly [number, ...number[]] = [
  ...([-1, 0.1, 10, 1e3, 1e-3, 25.4, 1 + 1e-9, 1e6, 1e-6, 0.999] as const),
]
const texts: readonly [string, ...string[]] = [
  ...([
    '',
    ' ',
    '\u0000',
    '\u001b[2J',
    '\u202eabc',
    '\u009b31m',
    '\ud800',
    '\ufffe',
    'a\nb',
  ] as const),
  ...['__proto__', 'constructor', '</script>', '=1+1', '${1}', '%s', 'x'.repeat(100)],
  ...['x'.repeat(201), 'word '.repeat(399), 'x'.repeat(20_001), 'é'.repeat(100), '💡'.repeat(50)],
]
const others: readonly [unknown, ...unknown[]] = [
  ...([null, true, false, [], {}, [[]], [0, 0], { rise: [0, 0] }, 'cold', 0, ''] as const),
]

function spotsOf(document: unknown): Spot[] {
  const spots: Spot[] = []
  const walk = (holder: unknown): void => {
    if (typeof holder !== 'object' || holder === null) return
    const entries: [string | number, unknown][] = Array.isArray(holder)
      ? holder.map((value, i) => [i, value])
      : Object.entries(holder)
    for (const [key, value] of entries) {
      spots.push({ holder: holder as Spot['holder'], key, value })
      walk(value)
    }
  }
  walk(document)
  return spots
}

const put = ({ holder, key }: Spot, value: unknown): void => {
  Object.defineProperty(holder, key, {
    value,
    enumerable: true,
    configurable: true,
    writable: true,
  })
}
const copy = (value: unknown): unknown =>
  value === undefined ? undefined : (JSON.parse(JSON.stringify(value)) as unknown)

function nested(levels: number): unknown {
  let deep: unknown = 1
  for (let i = 0; i < levels; i++) deep = i % 2 === 0 ? [deep] : { deep }
  return deep
}

/** One change of a document in place. Most are of numbers, which get farthest. */
type Mutation = (random: Random, spots: readonly [Spot, ...Spot[]]) => void

const of =
  (wanted: (spot: Spot) => boolean, change: (random: Random, spot: Spot, all: Spot[]) => void) =>
  (random: Random, spots: readonly Spot[]): void => {
    const [first, ...rest] = spots.filter(wanted)
    if (first) change(random, random.pick([first, ...rest]), [first, ...rest])
  }
const isNumber = ({ value }: Spot) => typeof value === 'number'
const isText = ({ value }: Spot) => typeof value === 'string'
const isList = ({ value }: Spot) => Array.isArray(value) && value.length > 0
const isField = ({ holder }: Spot) => !Array.isArray(holder)

const kinds: readonly (readonly [weight: number, Mutation])[] = [
  [
    30,
    of(isNumber, (random, spot) => {
      put(spot, random.pick(numbers))
    }),
  ],
  [
    30,
    of(isNumber, (random, spot) => {
      put(spot, (spot.value as number) * random.pick(factors))
    }),
  ],
  [
    12,
    of(isNumber, (random, spot, [one, ...more]) => {
      if (one) put(spot, random.pick([one, ...more]).value)
    }),
  ],
  [
    5,
    of(isNumber, (random, spot, all) => {
      // all of one name at once, as by a slip of the unit
      const factor = random.pick(factors)
      for (const other of all)
        if (other.key === spot.key) put(other, (other.value as number) * factor)
    }),
  ],
  [
    5,
    of(isText, (random, spot) => {
      put(spot, random.pick(texts))
    }),
  ],
  [
    5,
    of(isText, (random, spot, [one, ...more]) => {
      if (one) put(spot, random.pick([one, ...more]).value)
    }),
  ],
  [
    8,
    of(isField, (_, { holder, key }) => {
      Reflect.deleteProperty(holder, key)
    }),
  ],
  [
    3,
    of(
      () => true,
      (random, spot) => {
        put(spot, random.pick(others))
      },
    ),
  ],
  [
    4,
    of(isList, (random, { value }) => {
      const list = value as unknown[]
      list.splice(random.whole(0, list.length - 1), 1)
    }),
  ],
  [
    4,
    of(isList, (random, { value }) => {
      const list = value as unknown[]
      list.splice(random.whole(0, list.length), 0, copy(list[random.whole(0, list.length - 1)]))
    }),
  ],
  [
    3,
    of(isList, (random, { value }) => {
      const list = value as unknown[]
      const [i, j] = [random.whole(0, list.length - 1), random.whole(0, list.length - 1)]
      ;[list[i], list[j]] = [list[j], list[i]]
    }),
  ],
  [
    2,
    of(isField, (random, { holder }) => {
      const key = random.pick([...texts, 'range', 'u', 'sag', 'guard', 'record'])
      put({ holder, key, value: undefined }, copy(random.pick(others)))
    }),
  ],
  [
    2,
    of(isField, (random, spot, [one, ...more]) => {
      // a field under another's name
      const other = one ? random.pick([one, ...more]) : spot
      put({ ...spot, key: other.key }, copy(other.value))
    }),
  ],
  [
    1,
    of(isField, (random, spot) => {
      put(spot, nested(random.pick([10, 99, 150, 3000])))
    }),
  ],
]
const whole = kinds.reduce((sum, [weight]) => sum + weight, 0)

function mutationOf(random: Random): Mutation {
  let left = random.between(0, whole)
  for (const [weight, mutation] of kinds) if ((left -= weight) < 0) return mutation
  return () => undefined
}

/** Changes of the text itself: cut short, a sign replaced, a line twice, a field twice. */
function spoilt(text: string, random: Random): string {
  const at = random.whole(0, text.length - 1)
  switch (random.whole(0, 3)) {
    case 0:
      return text.slice(0, at)
    case 1:
      return `${text.slice(0, at)}${random.pick(['"', '{', ']', ',', '\\', '\u0000', 'e', '-'])}${text.slice(at + 1)}`
    case 2:
      return `${text.slice(0, at)}${text.slice(random.whole(0, at))}`
    default:
      return text.replace(/"(\w+)":/g, (whole, key: string) =>
        random.chance(0.02) ? `"${key}":1,${whole}` : whole,
      )
  }
}

/** Many numbers at once, each to an edge of what its place may hold, so that most are read. */
const edges: readonly [number, ...number[]] = [0, 1e-6, 1e-3, 1, 10, 1000, 1e6]
function stormed(spots: readonly Spot[], random: Random): void {
  const share = random.pick([0.02, 0.1, 0.5])
  for (const spot of spots.filter(isNumber))
    if (random.chance(share)) {
      const sign = (spot.value as number) < 0 || random.chance(0.1) ? -1 : 1
      put(spot, sign * random.pick(edges) * random.pick([1, 1, random.between(0.5, 1)]))
    }
}

/** JSON of any depth: the language's own is quicker, and gives up at some six thousand levels. */
function written(document: unknown): string {
  try {
    return JSON.stringify(document)
  } catch {
    return writtenDeep(document)
  }
}

function writtenDeep(document: unknown): string {
  const parts: string[] = []
  const open: ({ readonly text: string } | { readonly value: unknown })[] = [{ value: document }]
  for (let next = open.pop(); next; next = open.pop()) {
    if ('text' in next) {
      parts.push(next.text)
      continue
    }
    const { value } = next
    if (typeof value !== 'object' || value === null) {
      parts.push(value === undefined ? 'null' : JSON.stringify(value))
      continue
    }
    const isArray = Array.isArray(value)
    const entries = Object.entries(value).filter(([, one]) => isArray || one !== undefined)
    parts.push(isArray ? '[' : '{')
    open.push({ text: isArray ? ']' : '}' })
    for (const [i, [key, one]] of [...entries.entries()].reverse())
      open.push(
        { value: one },
        { text: `${i > 0 ? ',' : ''}${isArray ? '' : `${JSON.stringify(key)}:`}` },
      )
  }
  return parts.join('')
}

/** The text of a document changed in one to four places, or in many; the same for the same draw. */
export function mutatedText(text: string, random: Random): string {
  const document: unknown = JSON.parse(text)
  if (random.chance(0.15)) stormed(spotsOf(document), random)
  const changes = random.pick([0, 1, 1, 1, 2, 2, 3, 4])
  for (let i = 0; i < changes; i++) {
    const [first, ...rest] = spotsOf(document)
    if (first) mutationOf(random)(random, [first, ...rest])
  }
  const changed = written(document)
  return random.chance(0.03) ? spoilt(changed, random) : changed
}
