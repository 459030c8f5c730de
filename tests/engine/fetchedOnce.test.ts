import { expect, test } from 'vitest'
import { fetchedOnce } from '../../src/worker/fetchedOnce'

test('who asks while it is fetched goes on in the order of asking, however long each fetch takes', async () => {
  const order: number[] = []
  const waits = [30, 0]
  const part = fetchedOnce(
    () => new Promise<string>((done) => setTimeout(done, waits.shift() ?? 0, 'part')),
  )
  const ask = async (id: number) => {
    await part()
    order.push(id)
  }
  await Promise.all([ask(1), ask(2)])
  await ask(3)
  expect(order).toEqual([1, 2, 3])
  // the second fetch, which would have been the quicker one, was never begun
  expect(waits).toEqual([0])
})

test('what could not be fetched is tried again by the next', async () => {
  let tries = 0
  const part = fetchedOnce(() => {
    tries++
    return tries === 1 ? Promise.reject(new Error('no network')) : Promise.resolve('part')
  })
  await expect(Promise.all([part(), part()])).rejects.toThrow('no network')
  expect(await part()).toBe('part')
  expect(tries).toBe(2)
})
