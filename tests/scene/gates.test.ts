import { describe, expect, it } from 'vitest'
import type { Gate } from '../../src/scene/gates'
import { draw, pair } from './trains'

/** Share 0.7 of 0.5 mrad over a span of 200 mm: 70 um. */
const half = 70

const hot = (rise: number, side = 0) => ({
  states: [
    { id: 'cold', name: 'cold' },
    { id: 'hot', name: 'hot' },
  ],
  growth: { hot: [{ at: 2100, rise, side }] },
})

async function gatesOf(document: ReturnType<typeof pair>) {
  const { figures, answer } = await draw(document)
  expect(answer.status).toBe('in-tolerance')
  return (what: Gate['what'], way: Gate['way']): Gate => {
    const gate = figures.gates.find((g) => g.what === what && g.way === way)
    if (!gate) throw new Error(`no gate for ${what}, ${way}`)
    return gate
  }
}

describe('gates', () => {
  it('open by share times limit times span about the other machine, at both planes', async () => {
    const gate = await gatesOf(pair({ z: 20 }))
    expect(gate('left plane', 'rise')).toMatchObject({ machine: 1, x: 1400, passes: 20 })
    expect(gate('left plane', 'rise').low.value).toBeCloseTo(-half, 9)
    expect(gate('left plane', 'rise').high.value).toBeCloseTo(half, 9)
    // the left line is zero; seen from the right one it may stand from 20 - 70 to 20 + 70
    expect(gate('right plane', 'rise')).toMatchObject({ machine: 0, x: 1200, passes: 0 })
    expect(gate('right plane', 'rise').low.value).toBeCloseTo(20 - half, 9)
    expect(gate('right plane', 'rise').high.value).toBeCloseTo(20 + half, 9)
    expect(gate('left plane', 'side').low.value).toBeCloseTo(-half, 9)
  })

  it('follow a slope to the plane where the line passes', async () => {
    // 0.1 mrad over 100 mm from mid-span: the right line is 10 um higher at its plane
    const gate = await gatesOf(pair({ z: 20, sz: 0.1 }))
    expect(gate('left plane', 'rise').passes).toBeCloseTo(30, 9)
    expect(gate('left plane', 'rise').high.value).toBeCloseTo(half, 9)
    // extended to the left plane the right line stands at 10
    expect(gate('right plane', 'rise').low.value).toBeCloseTo(10 - half, 9)
  })

  it('are what is common to all states, each edge with the state that sets it', async () => {
    const { states, growth } = hot(40)
    const gate = await gatesOf(pair({}, { right: { growth }, top: { states } }))
    const right = gate('left plane', 'rise')
    expect(right.low.value).toBeCloseTo(-half, 9)
    expect(right.low.state).toBe(0)
    expect(right.high.value).toBeCloseTo(half - 40, 9)
    expect(right.high.state).toBe(1)
    expect(right.states[1]?.low).toBeCloseTo(-half - 40, 9)
    const left = gate('right plane', 'rise')
    expect(left.low.value).toBeCloseTo(40 - half, 9)
    expect(left.low.state).toBe(1)
    expect(left.high.value).toBeCloseTo(half, 9)
    expect(left.high.state).toBe(0)
  })

  it('grow with the factor of a state', async () => {
    const gate = await gatesOf(
      pair({}, { top: { states: [{ id: 'start', name: 'cold start', tolerance: 3 }] } }),
    )
    expect(gate('left plane', 'rise').high.value).toBeCloseTo(3 * half, 9)
  })

  it('of a round tolerance leave what the other direction has not used', async () => {
    // 42 um aside of 70 leave the third side of the triangle: 56
    const gate = await gatesOf(
      pair({ y: 42 }, { coupling: { tolerance: { flex: 0.5, shape: 'round' } } }),
    )
    expect(gate('left plane', 'rise').high.value).toBeCloseTo(56, 9)
    expect(gate('left plane', 'rise').low.value).toBeCloseTo(-56, 9)
    expect(gate('left plane', 'side').high.value).toBeCloseTo(70, 9)
  })

  it('of offset and angle stand at mid-span and at the nearest foot of the right machine', async () => {
    const gate = await gatesOf(
      pair({ z: 10, sz: 0.2 }, { coupling: { tolerance: { offset: 100, angle: 1 } } }),
    )
    expect(gate('offset', 'rise')).toMatchObject({ machine: 1, x: 1300, passes: 10 })
    expect(gate('offset', 'rise').high.value).toBeCloseTo(70, 9)
    // 300 mm from mid-span: at 10 + 60 now; the slope may be from -0.7 to 0.7 mrad
    expect(gate('angle', 'rise').x).toBe(1600)
    expect(gate('angle', 'rise').passes).toBeCloseTo(70, 9)
    expect(gate('angle', 'rise').low.value).toBeCloseTo(10 - 210, 9)
    expect(gate('angle', 'rise').high.value).toBeCloseTo(10 + 210, 9)
  })

  it('are not drawn where there is no plan', async () => {
    const { figures, answer } = await draw(pair({ z: 900 }, { right: { held: true } }))
    expect(answer.status).toBe('impossible')
    expect(figures.gates).toEqual([])
    expect(figures.lines.every(({ planned }) => planned === undefined)).toBe(true)
  })
})
