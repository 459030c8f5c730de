import * as z from 'zod/mini'
import { workRecord, type ReadAgain } from '../document/work'
import { signedDigits } from '../language/amounts'
import { signed } from '../language/signed'
import { capital } from '../language/names'
import { fineSign, micrometresPer, slopeSign, type DocumentUnits } from '../mechanics/units'

/** What bodies and couplings are called, by id; an id that nobody knows stands for itself. */
export type Names = (id: string) => string

const ways = z.object({ y: z.number(), z: z.number() })
/** A page of a round, as far as it is told here; pages before it kept its units are printed as they were written. */
const round = z.object({
  units: z.object({
    fine: z.enum(['um', 'mm', 'mil']),
    length: z.enum(['mm', 'in']),
    temperature: z.enum(['C', 'F']),
  }),
  work: workRecord.shape.work,
  read: workRecord.shape.again,
  gaps: workRecord.shape.gaps,
  comparison: z.optional(
    z.object({
      couplings: z.array(
        z.object({
          coupling: z.string(),
          sets: z.array(
            z.object({
              set: z.number(),
              rows: z.array(
                z.object({
                  hour: z.number(),
                  expected: z.number(),
                  measured: z.number(),
                  difference: z.number(),
                }),
              ),
              line: z.optional(z.object({ offset: ways, slope: ways })),
            }),
          ),
        }),
      ),
    }),
  ),
})

/** What was done in a round and what was read in it, each reading beside its target; undefined for another content. */
export function roundLines(content: unknown, name: Names): string[] | undefined {
  const { data } = round.safeParse(content)
  if (!data) return undefined
  const { work = [], read = [], gaps = [], comparison, units } = data
  const told = (value: number) => digits(value, units)
  const unit = `in ${fineSign[units.fine]}`
  const done = work.flatMap(({ body, foot, shim, side, axial, done: ticked, note }) => {
    const amounts = [
      ...(shim === undefined ? [] : [`shim ${told(shim)}`]),
      ...(side === undefined ? [] : [`slide ${told(side)}`]),
      ...(axial === undefined ? [] : [`along ${told(axial)}`]),
    ]
    if (amounts.length === 0 && note === undefined) return []
    const where = `${capital(name(body))}${foot === undefined ? '' : `, foot ${foot}`}`
    return [
      `  ${where}: ${[...amounts, ...(note === undefined ? [] : [note])].join(', ')}${ticked ? '' : ' (not ticked)'}`,
    ]
  })
  const stops = read.flatMap((entry) => {
    const rows = setDigits(entry, units)
    return entry.step === undefined || rows === ''
      ? []
      : [`  ${capital(name(entry.coupling))}, set ${entry.set + 1}, at ${entry.step}: ${rows}`]
  })
  const apart = gaps.map(
    ({ coupling, step, gap }) => `  ${capital(name(coupling))}, at ${step}: ${gap} ${units.length}`,
  )
  const beside = (comparison?.couplings ?? []).flatMap(({ coupling, sets }) =>
    sets.flatMap(({ set, rows, line }) => {
      const parts = [
        ...rows.map(
          ({ hour, expected, measured, difference }) =>
            `at ${hour}: ${told(measured)}, target ${told(expected)}, apart ${told(difference)}`,
        ),
        ...(line
          ? [
              `a line, apart from its target by ${told(line.offset.z)} up and ${told(line.offset.y)} to the side, slopes ${slope(line.slope.z)} and ${slope(line.slope.y)} ${slopeSign(units)}`,
            ]
          : []),
      ]
      return parts.length === 0
        ? []
        : [`  ${capital(name(coupling))}, set ${set + 1}: ${parts.join('; ')}`]
    }),
  )
  const part = (head: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [`${head}:`, ...lines]
  return [
    ...part(`Done, ${unit}, + up, toward 3 o'clock and to the right`, done),
    ...part(`Read at stop points, ${unit}`, stops),
    ...part('Gaps between shaft ends, cold', apart),
    ...part(`Readings beside their targets, ${unit}`, beside),
  ]
}

/** A value of the document's own unit with its sign, in the digits people read. */
const digits = (value: number, units: DocumentUnits): string =>
  signedDigits(value * micrometresPer[units.fine], units)

const slope = (value: number): string => signed(value.toFixed(2))

function setDigits({ readings, offset, slope: tilt }: ReadAgain, units: DocumentUnits): string {
  const rows = (readings ?? []).flatMap(([hour, value]) =>
    value === undefined ? [] : [`at ${hour}: ${digits(value, units)}`],
  )
  const line = [
    ...(['z', 'y'] as const).flatMap((way) => {
      const value = offset?.[way]
      return value === undefined
        ? []
        : [`offset ${way === 'z' ? 'up' : 'to the side'} ${digits(value, units)}`]
    }),
    ...(['z', 'y'] as const).flatMap((way) => {
      const value = tilt?.[way]
      return value === undefined
        ? []
        : [`slope ${way === 'z' ? 'up' : 'to the side'} ${slope(value)} ${slopeSign(units)}`]
    }),
  ]
  return [...rows, ...line].join(', ')
}
