import { signed } from '../language/signed'
import { closure } from '../mechanics/readings/closure'
import { lengthText } from '../language/amounts'
import { fineSign, slopeSign, toFine, type Micrometres } from '../mechanics/units'
import type { Coupling, ReadingSet, Train } from '../mechanics/train'
import { inSentence } from '../language/names'
import { sideName, sideNoun } from '../language/sides'

/** Readings as taken: a column a set, a row an hour; cells are as typed, "" where nothing was read. */
export interface ReadingTable {
  readonly unit: string
  readonly columns: readonly string[]
  readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[]
}

/** The tables of one coupling: its sweeps together, and what was given as a line. */
export function readingTables(train: Train, coupling: Coupling): ReadingTable[] {
  const sweeps = coupling.found.filter((set) => set.kind !== 'line')
  const lines = coupling.found.filter((set) => set.kind === 'line')
  return [
    ...(sweeps.length > 0 ? [sweepTable(train, coupling, sweeps)] : []),
    ...(lines.length > 0 ? [lineTable(train, lines)] : []),
  ]
}

type Sweep = Exclude<ReadingSet, { kind: 'line' }>
type LineSet = Extract<ReadingSet, { kind: 'line' }>

function sweepTable(train: Train, coupling: Coupling, sets: readonly Sweep[]): ReadingTable {
  const digits = (value: Micrometres) => signedReading(fineDigits(value, train))
  const quarters = [12, 3, 6, 9]
  const others = [...new Set(sets.flatMap(({ readings }) => readings.map(({ hour }) => hour)))]
    .filter((hour) => !quarters.includes(hour))
    .sort((a, b) => a - b)
  const row = (label: string, cell: (set: Sweep) => string | undefined) => ({
    label,
    cells: sets.map((set) => cell(set) ?? ''),
  })
  const atHour = (hour: number) =>
    row(hourLabel(train, hour), ({ readings }) => {
      const reading = readings.find((r) => r.hour === hour)
      return reading && digits(reading.value)
    })
  return {
    unit: fineSign[train.units.fine],
    columns: sets.map((set) => setWords(train, coupling, set)),
    rows: [
      ...quarters.map(atHour),
      ...others.map(atHour),
      row('sag', (set) =>
        set.kind === 'gap' ? 'none' : set.sagGiven ? digits(set.sag) : 'not entered',
      ),
      row('dial sum check', (set) => {
        const value = closure(set)
        return value === undefined ? undefined : digits(value)
      }),
    ].filter(({ cells }) => cells.some((cell) => cell !== '')),
  }
}

/** "top", "bottom", a side's name, or the hour as a clock shows it. */
function hourLabel(train: Train, hour: number): string {
  switch (hour) {
    case 12:
      return 'top'
    case 3:
      return sideNoun(train, 1)
    case 6:
      return 'bottom'
    case 9:
      return sideNoun(train, -1)
  }
  const minutes = Math.round((hour % 1) * 60)
  const clock = `${Math.floor(hour) === 0 ? 12 : Math.floor(hour)}:${String(minutes).padStart(2, '0')}`
  return `at ${clock}`
}

function setWords(train: Train, coupling: Coupling, set: Sweep): string {
  const name = (side: 'left' | 'right') => inSentence(train.machines[coupling[side]]?.name ?? '')
  switch (set.kind) {
    case 'rim':
      return `rim of ${name(set.rides)}, at ${lengthText(set.at, train.units)}`
    case 'face':
      return `${set.face === 'back' ? 'back of the face' : 'face'} of ${name(set.rides)}, ${lengthText(set.diameter, train.units)} across`
    case 'gap':
      return `gap between the faces, ${lengthText(set.diameter, train.units)} across`
    case 'spool':
      return `spacer against ${name(set.end)}, ${lengthText(set.diameter, train.units)} across`
  }
}

/** A line set says where the right machine's axis stands against the left one's. */
function lineTable(train: Train, sets: readonly LineSet[]): ReadingTable {
  const cell = (value: number | undefined, words: readonly [string, string], unit: string) =>
    value === undefined
      ? ''
      : value === 0
        ? '0'
        : `${digitsOf(Math.abs(value), 6)} ${unit} ${value > 0 ? words[0] : words[1]}`
  const sides = [sideName(train, 1), sideName(train, -1)] as const
  const fine = (value?: Micrometres) =>
    value === undefined ? undefined : Number(fineDigits(value, train))
  const row = (label: string, of: (set: LineSet) => string) => ({ label, cells: sets.map(of) })
  const unit = fineSign[train.units.fine]
  const slope = slopeSign(train.units)
  return {
    unit: '',
    columns: sets.map((set) => `right shaft against left, at ${lengthText(set.at, train.units)}`),
    rows: [
      row('rise', (set) => cell(fine(set.offset.z), ['high', 'low'], unit)),
      row('side', (set) => cell(fine(set.offset.y), sides, unit)),
      row('slope up', (set) => cell(set.slope.z, ['rising', 'falling'], slope)),
      row('slope aside', (set) => cell(set.slope.y, sides, slope)),
    ].filter(({ cells }) => cells.some((text) => text !== '')),
  }
}

/** Digits finer than any dial: what was typed in one unit and is shown in another has no end of them. */
const decimals = { um: 2, mm: 5, mil: 3 } as const

const fineDigits = (value: Micrometres, { units }: Train): string =>
  digitsOf(toFine(value, units), decimals[units.fine])

/** As typed: conversion to um and back may leave a last digit that nobody wrote. */
const digitsOf = (value: number, most: number): string => String(Number(value.toFixed(most)))

/** A dial reads + when its stem is pushed in, so readings carry their sign. */
const signedReading = (digits: string): string => (Number(digits) === 0 ? '0' : signed(digits))
