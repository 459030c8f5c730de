import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test, type Page, type TestInfo } from '@playwright/test'
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
  const lines = train.couplings.flatMap(({ name, found }, c) =>
    found.flatMap((set, s): Record<string, Cell>[] => {
      const coupling = { coupling: name ?? c + 1, set: s + 1 }
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

const machinesTable = (): string =>
  table([
    [
      'machine',
      'role',
      'axis z',
      'axis y',
      'left axis z',
      'left axis y',
      'right axis z',
      'right axis y',
      'fixed',
      'effort',
    ],
    ...train.machines.map(({ name, role, axis, held, effort }) => [
      name,
      role,
      ...('left' in axis
        ? ['', '', axis.left.z, axis.left.y, axis.right.z, axis.right.y]
        : [axis.z, axis.y, '', '', '', '']),
      held ? 'yes' : '',
      effort,
    ]),
  ])

const nozzlesTable = (): string =>
  table([
    ['machine', 'nozzle', 'x', 'height', 'side from', 'side to', 'rise from', 'rise to'],
    ...train.machines.flatMap(({ name, restraints = [] }) =>
      restraints.map(({ id, x, z, side = [], rise = [] }) => [name, id, x, z, ...side, ...rise]),
    ),
  ])

const statesTable = (): string =>
  table([
    ['state', 'tolerances times'],
    ...(train.states ?? []).map(({ name, tolerance }) => [name, tolerance]),
  ])

/** Several tables in one piece, as they stand below each other in a spreadsheet. */
const sheet = (...tables: readonly string[]): string => tables.join('\n\n')

const couplingsTable = (): string =>
  table([
    [
      'left machine',
      'coupling',
      'left plane',
      'right plane',
      'speed',
      'angle at each plane',
      'shape',
    ],
    ...train.couplings.map(({ name, left, right, speed, tolerance }, c) => [
      train.machines[c]?.name,
      name,
      left.plane,
      right.plane,
      speed,
      tolerance.flex,
      tolerance.shape,
    ]),
  ])

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

/** What stands on the sheet gives the plan of the file, and shows it. */
async function hasThePlan(page: Page, info: TestInfo, began: number): Promise<void> {
  await drawn(page)
  // what the machine takes: nobody reads, thinks or looks for a key here
  const seconds = ((Date.now() - began) / 1000).toFixed(1)
  info.annotations.push({ type: 'seconds from the first press to the plan', description: seconds })
  // only to look at it: the file is written and read
  const made = await savedTrain(page)
  const plan = (name: string, document: TrainDocument): string => {
    const path = info.outputPath(name)
    writeFileSync(path, JSON.stringify(document))
    return printed(path)
  }
  const text = plan('made.json', made)
  expect(text).toBe(plan('file.json', byTheClock(train)))
  const told = text.replace(/\s+/g, ' ')
  for (const part of ['.sentence h1', '.sentence .moves'])
    expect(told).toContain((await page.locator(part).innerText()).replace(/\s+/g, ' '))
}

/** Most presses of keys, of all kinds; a value that is typed into a cell counts as one. */
const mostPresses = 300
/** Most presses of the mouse button; a choice from a list takes two. */
const mostClicks = 40
/** Pieces that come out of a spreadsheet. */
const mostPastes = 2

const enterRows = (page: Page) => page.getByRole('button', { name: /^Enter \d+ rows$/ })

test(
  'a whole train is entered from nothing by keys alone, in few presses, and has the plan of its file',
  { tag: '@whole' },
  async ({ page, context }, info) => {
    await context.grantPermissions(['clipboard-read', 'clipboard-write'])
    const seen = watch(page)
    let presses = 0
    let letters = 0
    let pastes = 0
    const key = async (...names: string[]): Promise<void> => {
      for (const name of names) {
        presses++
        await page.keyboard.press(name)
      }
    }
    const type = async (text: Cell): Promise<void> => {
      if (text === undefined) return
      presses++
      letters += String(text).length
      await page.keyboard.insertText(String(text))
    }
    /** A list takes the first letters of what is wanted. */
    const choose = async (text: string): Promise<void> => {
      presses++
      await page.keyboard.type(text)
    }
    const walkTo = async (name: string | RegExp): Promise<void> => {
      presses += await tabTo(page, name)
    }
    /** What a spreadsheet has put on the clipboard goes in as one piece, wherever in the band one is. */
    const paste = async (text: string): Promise<void> => {
      pastes++
      await page.evaluate((copied) => navigator.clipboard.writeText(copied), text)
      await key('Control+V')
      await expect(enterRows(page)).toBeFocused()
      await key('Enter')
    }
    const at = (name: RegExp) => expect.poll(() => focused(page)).toMatch(name)

    await openSheet(page)
    const began = Date.now()
    await walkTo('New train')
    await key('Enter')
    await expect(page.locator('.sentence h1')).toHaveText('A train to be entered')

    // the job, with its units, is where one is
    await at(/^name of the job$/)
    await type(train.name)
    await walkTo(/^shims, moves and readings in/)
    await key('Home')
    await walkTo('the end from which clock faces are seen')
    await key('End', 'Tab')
    await type(train.sides?.nine)
    await key('Tab')
    await type(train.sides?.three)

    // what comes next is led to from anywhere
    await key('Control+Enter')
    await expect(page.getByRole('button', { name: 'Add a machine at the left end' })).toBeFocused()
    for (const [m, machine] of train.machines.entries()) {
      // below the last row one more is added
      if (m > 0) await key('ArrowDown')
      await key('Enter')
      await at(/^name of machine /)
      await type(machine.name)
      await key('Tab')
      await choose(machine.role ?? 'other')
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
        await type(y)
      }
      if (machine.held) await key('Tab', 'Space')
    }
    await key('ArrowDown', 'Tab')
    await expect(page.getByRole('button', { name: /^More columns: speed/ })).toBeFocused()
    await key('Enter', 'Shift+Tab', 'ArrowUp')
    await walkTo(new RegExp(`^effort of disturbing ${train.machines.at(-1)?.name ?? ''},? `))
    for (const { effort } of [...train.machines].reverse()) {
      await type(effort)
      await key('ArrowUp')
    }
    await key(...train.machines.map(() => 'ArrowDown'))
    for (const machine of train.machines)
      for (const point of machine.restraints ?? []) {
        await walkTo('the body that has the new point')
        await choose(machine.name)
        await key('Shift+Tab', 'Enter')
        await at(/^id of point /)
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
          await type(cell)
        }
        await key('ArrowDown')
      }

    await key('Control+Enter')
    await at(/^x of new feet of /)
    await paste(feetTable())
    for (const coupling of train.couplings) {
      await key('Control+Enter')
      await at(/^left plane of /)
      if (coupling.name !== undefined) {
        await key('Shift+Tab', 'Shift+Tab')
        await type(coupling.name)
        await key('Tab', 'Tab')
      }
      await type(coupling.left.plane)
      await key('Tab')
      await type(coupling.right.plane)
      await key('Tab')
      await type(coupling.speed)
      await key('Tab')
      await type(coupling.tolerance.flex)
      // a new coupling is judged round
      expect(coupling.tolerance.shape).toBe('round')
    }
    await key('Control+Enter')
    for (const [s, state] of (train.states ?? []).entries()) {
      if (s === 0) await walkTo('Add a state')
      else await key('ArrowDown')
      await key('Enter')
      await at(/^name of state /)
      await type(state.name)
      await key('Tab')
      await type(state.tolerance)
    }
    // each goes where its headings say, whatever band one is in
    await paste(sheet(readingsTable(), growthTable()))
    expect(seen.faults).toEqual([])
    await hasThePlan(page, info, began)
    info.annotations.push({ type: 'presses', description: String(presses) })
    info.annotations.push({ type: 'letters typed', description: String(letters) })
    expect(presses).toBeLessThan(mostPresses)
    expect(pastes).toBe(mostPastes)
  },
)

test('a whole train is entered from nothing by mouse alone, in few clicks, and has the plan of its file', async ({
  page,
}, info) => {
  const seen = watch(page)
  let clicks = 0
  const click = async (name: string | RegExp): Promise<void> => {
    clicks++
    await page.getByRole('button', { name, exact: true }).click()
  }
  /** Clicks into a cell and types. */
  const cell = async (name: string, text: Cell): Promise<void> => {
    clicks++
    await page.getByRole('textbox', { name }).click()
    await page.keyboard.insertText(String(text))
  }
  const choose = async (name: string | RegExp, value: string): Promise<void> => {
    clicks += 2
    await page.getByRole('combobox', { name }).selectOption(value)
  }
  let pastes = 0
  const paste = async (text: string): Promise<void> => {
    pastes++
    await click('Paste tables of the whole job')
    await page.keyboard.insertText(text)
    await expect(enterRows(page)).toBeEnabled()
    clicks++
    await enterRows(page).click()
  }

  await openSheet(page)
  const began = Date.now()
  await click('New train')
  await expect(page.locator('.sentence h1')).toHaveText('A train to be entered')
  await cell('name of the job', train.name)
  await choose('shims, moves and readings in', train.units.fine)
  await choose('the end from which clock faces are seen', train.clock.seenFrom)
  await cell("name of the 9 o'clock side", train.sides?.nine)
  await cell("name of the 3 o'clock side", train.sides?.three)
  await paste(sheet(machinesTable(), nozzlesTable(), feetTable(), couplingsTable(), statesTable()))
  await paste(sheet(readingsTable(), growthTable()))
  expect(seen.faults).toEqual([])
  await hasThePlan(page, info, began)
  info.annotations.push({ type: 'clicks', description: String(clicks) })
  expect(clicks).toBeLessThan(mostClicks)
  expect(pastes).toBe(mostPastes)
})
