import { inSentence } from '../../src/language/names'
import type { Body, Coupling, Foot, Train } from '../second/train'

/** Reads what a remedy's sentence tells people to do, and enters it in a copy of the file: numbers and names as they stand there. */
export function enteredBySentence(file: Train, sentence: string): Train | undefined {
  const changed = structuredClone(file)
  const bodies: Body[] = [...changed.machines, ...(changed.skids ?? [])]
  const bodyNamed = (name: string): Body => {
    const body = bodies.find((one) => inSentence(one.name) === name)
    if (!body) throw new Error(`no ${name}: ${sentence}`)
    return body
  }
  let known = 0
  const every = (pattern: RegExp, enter: (parts: string[]) => void) => {
    for (const [, ...parts] of sentence.matchAll(pattern)) {
      known += 1
      enter(parts)
    }
  }
  every(/Release (the .+?)\. /g, ([name = '']) => {
    bodyNamed(name).held = false
  })
  every(/(?:^|\. )(The [^.]+?) fixed instead of (the [^.]+?)\. /g, ([now = '', before = '']) => {
    bodyNamed(`t${now.slice(1)}`).held = true
    bodyNamed(before).held = false
  })
  every(/Plan with ([\d.]+) % of tolerance instead/g, ([percent]) => {
    changed.plan = { ...changed.plan, share: Number(percent) / 100 }
  })
  every(/Widen the tolerance in (.+?) from [\d.]+ to ([\d.]+) times/g, ([name, times]) => {
    // a train without states has one, cold
    changed.states ??= [{ id: 'cold', name: 'cold' }]
    const state = changed.states.find((one) => one.name === name)
    if (state) state.tolerance = Number(times)
  })
  every(/Let (the .+?) be tilted by ([\d.]+) instead/g, ([name = '', tilt]) => {
    bodyNamed(name).tilt = Number(tilt)
  })
  every(/Accept (.+?)\. (?=Then|Other|No|[A-Z])/g, ([what = '']) => {
    accept(changed, what)
  })
  const atFeet = (lead: RegExp, enter: (foot: Foot, by: number) => void) => {
    every(new RegExp(`${lead.source} (.+?)\\. (?=[A-Z])`, 'g'), ([list = '']) => {
      for (const part of list.split('; ')) {
        const body = bodies.find(({ name }) => part.endsWith(` of ${inSentence(name)}`))
        if (!body) throw new Error(part)
        for (const [by, feet] of amountsAt(part.slice(0, -inSentence(body.name).length - 4)))
          for (const foot of body.feet) if (feet(foot.id)) enter(foot, by)
      }
    })
  }
  atFeet(
    /(?:Reduce the shanks of bolts|Open holes), for more room each way \([^)]*\):/,
    ({ hole }, by) => {
      if (hole) hole.clearance += 2 * by
    },
  )
  atFeet(/Re-centre bolts in their holes:/, ({ hole }, by) => {
    if (!hole) return
    const [x, y] = [hole.x ?? 0, hole.y ?? 0]
    const left = 1 - Math.min(1, by / Math.hypot(x, y))
    Object.assign(hole, { x: x * left, y: y * left })
  })
  atFeet(/Allow packs to be thinner than their minimum by/, ({ pack }, by) => {
    if (pack) pack.min = (pack.min ?? 0) - by
  })
  atFeet(/Machine feet or their pads down:/, ({ pack }, by) => {
    if (pack) pack.now += by
  })
  every(/Let piping follow further: (.+?)\. (?=[A-Z])/g, ([list = '']) => {
    for (const part of list.split('; ')) {
      const body = bodies.find(({ name }) => part.endsWith(` of ${inSentence(name)}`))
      if (!body) throw new Error(part)
      for (const [by, , text] of amountsAt(part.slice(0, -inSentence(body.name).length - 4)))
        follow(body, text, by)
    }
  })
  return known === 0 || sentence.includes('Raise ') || sentence.includes('aise the ')
    ? undefined
    : changed
}

const unit = '(?:µm|mm|mil)'

/** "0.4 mm at foot 1 and 0.6 mm at feet 2 and 3": each amount, which feet it is for, and the words. */
function amountsAt(text: string): [number, (id: string) => boolean, string][] {
  const each = new RegExp(`([\\d.]+) ${unit} at (.+?)(?=(?:, | and )[\\d.]+ ${unit} at |$)`, 'g')
  return [...text.matchAll(each)].map(([, amount, where = '']) => {
    const names = where.replace(/^(foot|feet) /, '').split(/, | and /)
    return [Number(amount), (id) => /^all \d+ feet$/.test(where) || names.includes(id), where]
  })
}

const ways = {
  'toward the left end': ['axial', 0],
  'toward the right end': ['axial', 1],
  "toward 9 o'clock": ['side', 0],
  "toward 3 o'clock": ['side', 1],
  downward: ['rise', 0],
  upward: ['rise', 1],
} as const

/** "nozzle 1 upward": the end of the room that it is given further. */
function follow(body: Body, text: string, by: number): void {
  let found = false
  for (const restraint of body.restraints ?? [])
    for (const [words, [way, end]] of Object.entries(ways)) {
      const room = restraint[way]
      const place = `${restraint.id} ${words}`
      if (!room || !new RegExp(`(^|, | and )${place}($|, | and )`).test(text)) continue
      room[end] += end === 0 ? -by : by
      found = true
    }
  if (!found) throw new Error(text)
}

/** "0.35 mrad instead of 0.3 mrad at A to B, in every state", or "at A to B ... in State 1 and ... in State 2". */
function accept(train: Train, text: string): void {
  let known = false
  for (const one of train.couplings) {
    const name = nameOf(train, one)
    const everywhere = `at ${name}, in every state`
    // of its limits and of its gap each
    const parts = text.includes(everywhere)
      ? text.split(everywhere).slice(0, -1)
      : text.split(`at ${name} `).slice(1)
    for (const part of parts) {
      known = true
      const [told = ''] = part.split(' instead of ')
      const named = / in (.+?)(?:, | and |$)/.exec(part)?.[1]
      const state = text.includes(everywhere)
        ? train.states?.[0]
        : train.states?.find((listed) => listed.name === named)
      enterLimits(one, told, state?.tolerance ?? 1)
    }
  }
  if (!known) throw new Error(text)
}

/** Limits as they are told of a state, entered as the file has them, before the factor of the state. */
function enterLimits({ tolerance, axial }: Coupling, told: string, factor: number): void {
  const number = (pattern: RegExp) => {
    const [, value] = pattern.exec(told) ?? []
    return value === undefined ? undefined : Number(value) / factor
  }
  const gap = number(/an axial gap within ([\d.]+)/)
  if (gap !== undefined && axial) axial.tolerance = gap
  const flex = number(/([\d.]+) (?:mrad|mil\/in) at each plane/)
  const offset = number(/([\d.]+) (?:µm|mm|mil) of offset/)
  const angle = number(/([\d.]+) (?:mrad|mil\/in) of angle/)
  const alone = [gap, flex, offset, angle].every((one) => one === undefined)
    ? number(/([\d.]+) (?:mrad|mil\/in)/)
    : undefined
  if (flex !== undefined || alone !== undefined) tolerance.flex = flex ?? alone
  if (offset !== undefined) tolerance.offset = offset
  if (angle !== undefined) tolerance.angle = angle
}

/** How people read a coupling that has no name of its own. */
function nameOf({ machines }: Train, { left, right }: Coupling): string {
  const name = (id: string) => machines.find((one) => one.id === id)?.name ?? ''
  return `${name(left.machine)} to ${name(right.machine)}`
}
