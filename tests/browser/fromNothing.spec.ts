import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from '@playwright/test'
import type { TrainDocument } from '../../src/document/schema'
import { focused, savedTrain, tabTo } from './figuresPage'
import { drawn, exampleText, openSheet, watch } from './sheet'

const file = 'bolt-bound-gearbox.json'
const train = JSON.parse(exampleText(file)) as TrainDocument
const root = fileURLToPath(new URL('../../', import.meta.url))

const printed = (path: string): string =>
  execFileSync('node', ['src/cli/holdfast.mjs', 'plan', path], { cwd: root, encoding: 'utf8' })

type Cell = string | number | undefined
const table = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => row.map((cell) => cell ?? '').join(',')).join('\n')

const feetTable = (): string =>
  table([
    ['machine', 'foot', 'x', 'y', 'pack now', 'least pack', 'clearance', 'hole y'],
    ...train.machines.flatMap(({ name, feet }) =>
      feet.map(({ id, x, y, pack, hole }) => [
        name,
        id,
        x,
        y,
        pack?.now,
        pack?.min,
        hole?.clearance,
        hole?.y,
      ]),
    ),
  ])

const growthTable = (): string =>
  table([
    ['machine', 'state', 'at x', 'axis', 'rise', 'side'],
    ...train.machines.flatMap(({ name, growth }) =>
      (train.states ?? []).flatMap((state) =>
        (growth?.[state.id] ?? []).map(({ at, axis, rise, side }) => [
          name,
          state.name,
          at,
          axis,
          rise,
          side,
        ]),
      ),
    ),
  ])

function readingsTable(): string {
  const lines = train.couplings.flatMap(({ name = '', found }) =>
    found.flatMap((set, s): Record<string, Cell>[] => {
      const coupling = { coupling: name, set: s + 1 }
      if (set.kind === 'line')
        return [
          {
            ...coupling,
            kind: 'line',
            x: set.at,
            'offset up': set.offset?.z,
            'offset sideways': set.offset?.y,
            'slope up': set.slope?.z,
            'slope sideways': set.slope?.y,
          },
        ]
      if (set.kind !== 'rim' && set.kind !== 'face') throw new Error(`a ${set.kind} set`)
      return [
        {
          ...coupling,
          kind: set.kind,
          shaft: set.rides,
          x: set.kind === 'rim' ? set.at : undefined,
          diameter: set.kind === 'face' ? set.diameter : undefined,
          sag: set.sag,
        },
        ...set.readings.map(([hour, reading]) => ({ ...coupling, hour, reading })),
      ]
    }),
  )
  const heads = [...new Set(lines.flatMap((line) => Object.keys(line)))]
  return table([heads, ...lines.map((line) => heads.map((head) => line[head]))])
}

/** The sheet keeps hours in the order of the clock, in whatever order they were read. */
const byTheClock = (document: TrainDocument): TrainDocument => ({
  ...document,
  couplings: document.couplings.map((coupling) => ({
    ...coupling,
    found: coupling.found.map((set) =>
      'readings' in set
        ? { ...set, readings: [...set.readings].sort(([a], [b]) => (a % 12) - (b % 12)) }
        : set,
    ),
  })),
})

test('a whole train is entered from nothing by the keyboard alone and has the plan of its file', async ({
  page,
}, info) => {
  test.setTimeout(900_000)
  const seen = watch(page)
  const key = async (...names: string[]): Promise<void> => {
    for (const name of names) await page.keyboard.press(name)
  }
  const type = (text: Cell) => page.keyboard.insertText(String(text))
  const into = async (name: string | RegExp, text: Cell): Promise<void> => {
    await tabTo(page, name)
    await type(text)
  }
  const enter = async (name: string | RegExp): Promise<void> => {
    await tabTo(page, name)
    await key('Enter')
  }

  await openSheet(page)
  await enter('New train')
  await expect(page.locator('.sentence h1')).toHaveText('A train to be entered')

  // what comes next leads to where it is entered
  await enter(/^Add the machines, from the left end of the train to the right\.$/)
  await expect(page.getByRole('button', { name: 'Add a machine at the left end' })).toBeFocused()
  for (const [m, machine] of train.machines.entries()) {
    if (m > 0) await tabTo(page, 'Add a machine at the right end')
    await key('Enter')
    expect(await focused(page)).toMatch(/^name of /)
    await type(machine.name)
    await key('Tab')
    // a list takes the first letters of what is wanted
    await page.keyboard.type(machine.role ?? 'other')
    await key('Tab')
    const { axis } = machine
    const ends = 'left' in axis ? [axis.left, axis.right] : [axis]
    if (ends.length > 1) await key('Space')
    for (const { z } of ends) {
      await key('Tab')
      await type(z)
    }
    for (const { y } of ends) {
      await key('Tab')
      if (y !== undefined) await type(y)
    }
    if (machine.held) {
      await tabTo(page, / is fixed$/)
      await key('Space')
    }
  }

  await tabTo(page, 'name of the job')
  await type(train.name)
  await tabTo(page, /^shims, moves and readings in/)
  await key('Home')
  await tabTo(page, 'the end from which clock faces are seen')
  await key('End')
  await into("name of the 9 o'clock side", train.sides?.nine)
  await into("name of the 3 o'clock side", train.sides?.three)

  for (const machine of train.machines)
    for (const point of machine.restraints ?? []) {
      await tabTo(page, 'the body that has the new point')
      await page.keyboard.type(machine.name)
      await key('Shift+Tab', 'Enter')
      expect(await focused(page)).toMatch(/^id of point /)
      await key('Control+a')
      await type(point.id)
      const cells = [
        point.x,
        point.y,
        point.z,
        ...(point.axial ?? [undefined, undefined]),
        ...(point.side ?? [undefined, undefined]),
        ...(point.rise ?? [undefined, undefined]),
      ]
      for (const cell of cells) {
        await key('Tab')
        if (cell !== undefined) await type(cell)
      }
    }

  // what a spreadsheet would have put on the clipboard goes in as one piece
  const paste = async (what: string, text: string): Promise<void> => {
    await enter(`Paste a table of ${what}`)
    await type(text)
    // the walk would pass a button that is not drawn yet
    await expect(page.getByRole('button', { name: /^Enter \d+ rows$/ })).toBeEnabled()
    await enter(/^Enter \d+ rows$/)
  }
  await paste('feet', feetTable())
  for (const [c, coupling] of train.couplings.entries()) {
    const title = coupling.name ?? ''
    const { name: left } = train.machines[c] ?? {}
    await tabTo(page, new RegExp(`^name of ${left ?? ''} to `, 'i'))
    await key('Control+a')
    await type(title)
    await key('Tab', 'Tab')
    await type(coupling.left.plane)
    await key('Tab')
    await type(coupling.right.plane)
    await key('Tab')
    await type(coupling.speed)
    await into(`angle allowed at each plane of ${title}, mrad`, coupling.tolerance.flex)
    await tabTo(page, `shape of the tolerance of ${title}`)
    await key('End')
  }
  // what comes next is now what was read
  await tabTo(page, /^What was read at the coupling/)
  await key('Enter')
  await paste('readings', readingsTable())
  for (const state of train.states ?? []) {
    await enter('Add a state')
    await type(state.name)
    await key('Tab')
    await type(state.tolerance)
  }
  await paste('growth', growthTable())
  expect(seen.faults).toEqual([])
  await drawn(page)
  // only to look at it: the file is written and read
  const made = await savedTrain(page)
  const plan = (name: string, document: TrainDocument): string => {
    const path = info.outputPath(name)
    writeFileSync(path, JSON.stringify(document))
    return printed(path)
  }
  const text = plan('made.json', made)
  expect(text).toBe(plan('file.json', byTheClock(train)))
  // and that is the plan on the sheet
  const told = text.replace(/\s+/g, ' ')
  for (const part of ['.sentence h1', '.sentence .moves'])
    expect(told).toContain(await page.locator(part).innerText())
})
