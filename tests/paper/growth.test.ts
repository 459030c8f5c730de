import { expect, test } from 'vitest'
import { blocksOf, exampleOf, made, wordsOf } from './sheets'

test('growth on the office print says where it comes from, what other sources say, and what is taken between', async () => {
  const document = exampleOf('pump-and-motor')
  const [motor] = document.machines
  const points = motor?.growth?.['summer']
  const [cold, warm] = document.states ?? []
  if (!points || !cold || !warm) throw new Error('the example has changed')
  const by = { source: 'measured', when: '3 May', by: 'B. Hill' } as const
  Object.assign(points[0] ?? {}, by)
  points.push({ at: points[0]?.at ?? 0, rise: 9, source: 'given', by: 'the maker', use: false })
  Object.assign(cold, { load: 0 })
  Object.assign(warm, { load: 100 })
  document.states?.push({
    id: 'half',
    name: 'Half load',
    load: 50,
    between: { from: cold.id, to: warm.id, by: 'load' },
  })
  const { paper } = await made(document, 'a4', 'office')
  const table = blocksOf(paper).flatMap((block) =>
    block.kind === 'table' && block.columns[1]?.head === 'at x' ? [block] : [],
  )[0]
  const column = (head: string) => table?.columns.findIndex((one) => one.head === head) ?? -1
  const cells = (head: string) => table?.rows.map((row) => row[column(head)] ?? '') ?? []
  expect(new Set(cells('Half load'))).toEqual(new Set(['between two states']))
  const summer = document.states?.find(({ id }) => id === 'summer')?.name ?? ''
  expect(cells(summer).join()).toContain('(measured, 3 May, B. Hill)')
  // what does not count is in no cell of growth that does
  expect(cells(summer).join()).not.toContain('9.0 mil')
  const words = wordsOf(paper)
  expect(words).toContain('Growth by other sources')
  expect(words).toContain('growth as given (the maker): rise at 4 in 9.0 mil against')
  expect(words).toContain('on a straight line from')
})
