// @vitest-environment happy-dom
import { expect, test } from 'vitest'
import { chooseExample, drawn, layOpen, openSheet, page, savedTrain } from './sheet'
import { isWhole } from '../counts'

const cell = (at: string) => page.locator(`[data-at="${at}"]`)
const figures = () => page.locator('[data-figures="states"]')
const press = (name: RegExp | string) => figures().getByRole('button', { name }).first().click()

test.runIf(isWhole)(
  'a measured source stands beside the one in use, with how far they are apart; either may count',
  async () => {
    await openSheet()
    await chooseExample('bolt-bound-gearbox.json')
    await layOpen('states')
    const before = (await savedTrain()).machines[0]?.growth?.['turndown']
    await press(/^Add a point to Steam turbine, .*turndown/i)
    const count = before?.length ?? 0
    const point = `machines[0].growth.turndown[${count}]`
    await cell(`${point}.at`).fill('0')
    await cell(`${point}.rise`).fill('300')
    await press(new RegExp(`^Source, source, Steam turbine, .*turndown.*point ${count + 1}$`, 'i'))
    await cell(`${point}.source`).selectOption('measured')
    await cell(`${point}.when`).fill('3 May')
    await cell(`${point}.by`).fill('B. Hill')
    await cell(`${point}.use`).click()
    await drawn()
    expect((await savedTrain()).machines[0]?.growth?.['turndown']).toEqual([
      ...(before ?? []),
      { at: 0, rise: 300, source: 'measured', when: '3 May', by: 'B. Hill', use: false },
    ])
    await expect(figures().locator('.fault-line').first()).toContainText(
      'growth measured off line to running (3 May, B. Hill): rise at 0 mm 300 µm against',
    )
  },
)

test.runIf(isWhole)(
  'growth of a state is taken between two others, and told what it lacks',
  async () => {
    await openSheet()
    await chooseExample('bolt-bound-gearbox.json')
    await layOpen('states')
    const states = (await savedTrain()).states ?? []
    await press('Add a state')
    const s = states.length
    await press(/^Loads and temperatures/)
    await press(/^Take growth between two other states, state/)
    const { between } = (await savedTrain()).states?.[s] ?? {}
    expect(between).toEqual({ from: states[0]?.id, to: states[1]?.id, by: 'load' })
    await expect(figures()).toContainText('taken between the two states that this one lies between')
    for (const [i, load] of [
      [0, 20],
      [1, 100],
      [s, 60],
    ] as const)
      await cell(`states[${i}].load`).fill(String(load))
    await drawn()
    await expect(figures()).toContainText('(100 % load), at 60 % load.')
    await press(/^Not between two states/)
    expect((await savedTrain()).states?.[s]?.between).toBeUndefined()
  },
)

test.runIf(isWhole)(
  'the lift of a gear is shown with its reasons, and entered as one edit that can be undone',
  async () => {
    await openSheet()
    await chooseExample('bolt-bound-gearbox.json')
    await layOpen('states')
    const train = await savedTrain()
    const gear = train.machines.findIndex(({ role }) => role === 'gearbox')
    const state = train.states?.[0]?.id ?? ''
    await press(/^Gear lift/)
    const helper = figures().locator('.gear-lift')
    await expect(helper).toContainText('Still asked for: power, speed of the driving shaft')
    const fields = {
      'power, kW': '3728',
      'speed of the driving shaft': '1800',
      'pitch diameter of the driving gear': '508',
      'mass that the left shaft carries': '200',
      'mass that the right shaft carries': '900',
      'clearance of the left bearings': '150',
      'clearance of the right bearings': '150',
      'oil film of the left bearings': '25',
      'oil film of the right bearings': '25',
    }
    for (const [label, value] of Object.entries(fields))
      await helper.getByLabel(new RegExp(`^${label}`)).fill(value)
    await expect(helper).toContainText('Turn a gear only in the direction in which it is loaded')
    await expect(helper).toContainText('which drives, turns clockwise')
    await helper.getByRole('button', { name: /^Add it to the growth/ }).click()
    await drawn()
    const points = (await savedTrain()).machines[gear]?.growth?.[state] ?? []
    expect(new Set(points.map(({ axis }) => axis))).toEqual(new Set(['left', 'right']))
    for (const { why } of points) expect(why).toContain('gear lift: 3728 kW, 1800 rpm')
    await page.getByRole('button', { name: /^Undo/ }).click()
    await drawn()
    expect((await savedTrain()).machines[gear]?.growth).toEqual(train.machines[gear]?.growth)
  },
)
