import { afterEach, expect, test, vi } from 'vitest'
import { clearedAfter, Shelf } from '../../src/app/shelf/shelf'

// Rows of the shelf's list of which some are damaged. They lie in this test, and not in a browser's database.

const sound = {
  ...{ id: 'sound', name: 'Pump', mark: '', site: 'North', machines: ['motor', 'pump'] },
  ...{ match: 'm', made: 1, changed: 2, revision: 1 },
}
const rows: object[] = [
  sound,
  { id: 'nothing' },
  { ...sound, id: 'wrong', name: 42, machines: null, changed: 'yesterday' },
  { ...sound, id: 'deep', machines: [7, 'fan'], mark: {}, site: [] },
  { ...sound, id: 'taken off', removed: 'long ago' },
]

function shelfOf(all: object[]): Shelf {
  const shelf = new Shelf()
  vi.spyOn(shelf, 'open').mockResolvedValue({ getAll: () => Promise.resolve(all) } as never)
  return shelf
}

afterEach(() => vi.restoreAllMocks())

test('damaged rows are listed with what is left of them, beside the sound ones', async () => {
  const list = await shelfOf(rows).list()
  expect(list.map(({ id }) => id).sort()).toEqual([
    'deep',
    'nothing',
    'sound',
    'taken off',
    'wrong',
  ])
  expect(list.find(({ id }) => id === 'sound')).toEqual(sound)
  expect(list.find(({ id }) => id === 'wrong')).toMatchObject({
    name: '',
    machines: [],
    changed: 0,
  })
  expect(list.find(({ id }) => id === 'deep')?.machines).toEqual(['', 'fan'])
})

test('they are looked through, and named apart, like any other', async () => {
  expect((await shelfOf(rows).list('fan')).map(({ id }) => id)).toEqual(['deep'])
  expect(await shelfOf(rows).freeMark('Pump', '')).toBe('2')
})

test('what was taken off long ago is cleared out, what has no time stays', async () => {
  const shelf = shelfOf([
    ...rows,
    { ...sound, id: 'old', removed: 5 },
    { ...sound, id: 'new', removed: 9 },
  ])
  const cleared: string[] = []
  vi.spyOn(shelf, 'clear').mockImplementation((id) => Promise.resolve(void cleared.push(id)))
  await shelf.clearOut(6 + clearedAfter)
  expect(cleared).toEqual(['old'])
})
