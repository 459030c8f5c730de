import { expect, test } from 'vitest'
import { bindingGroups } from '../../src/engine/plan/bindingGroups'
import { PlanRun } from '../../src/engine/plan/planRun'
import { costWithRoom, loosen, roomAtPrice } from '../../src/engine/lp/relax'
import { RoomPaths } from '../../src/engine/lp/roomPaths'
import { solveRounds } from '../../src/engine/lp/rounds'
import type { LinearProgram } from '../../src/engine/lp/solver'
import { glpkSolver } from '../../src/solvers/glpk'
import { counted } from '../counts'
import { read } from '../holds/choice'
import { Random } from '../second/random'
import { randomTrain } from '../second/randomTrain'

const trains = counted(12, 400, 40)

test(
  'what a limit more saves, followed from the least cost, is what the solver finds with that much room',
  async () => {
    const solver = await glpkSolver()
    const spared: LinearProgram[] = []
    const told = { ...solver, spared: (program: LinearProgram) => spared.push(program) }
    const counts = { costs: 0, rooms: 0, circles: 0, untold: 0 }
    // few trains need not lean on enough limits: more are asked until they do
    const few = () =>
      counts.costs <= trains || counts.rooms <= trains / 2 || counts.circles <= trains / 4
    for (let seed = 31_001; seed < 31_001 + trains || few(); seed++) {
      const random = new Random(seed)
      const train = read(randomTrain(seed))
      const solved = new PlanRun(train, solver).solved()
      if (solved.status !== 'planned') continue
      for (const { program, least } of solved.parts) {
        const paths = new RoomPaths(program, least, told)
        const cost = least.answer.objective
        for (const group of bindingGroups(train, program, least)) {
          const loose = loosen(program, group)
          const where = `train ${seed}, ${JSON.stringify(group.meaning)}`
          const room = random.scale(0.02, 20)
          const followed = paths.costWith(group, room)
          if (followed === undefined) {
            counts.untold++
            continue
          }
          const written = costWithRoom(loose, least.share, room)
          const asked = solveRounds(loose, written, least.cuts, solver)
          if (asked.kind !== 'optimal') throw new Error(`${where}: ${asked.kind}`)
          const near = 1e-5 * Math.max(1, cost)
          expect(Math.abs(followed - asked.answer.objective), where).toBeLessThan(near)
          counts.costs++
          if (group.circles.length > 0) counts.circles++
          // where it ends, the solver finds the cost that was asked for
          const price = 0.6 * group.price
          const most = paths.roomFor(group, cost, price, 1000)
          if (most === undefined) continue
          const end = solveRounds(loose, costWithRoom(loose, least.share, most), least.cuts, solver)
          if (end.kind !== 'optimal') throw new Error(`${where}: ${end.kind}`)
          const over = end.answer.objective + price * most - cost
          expect(most < 1000 ? Math.abs(over) : Math.max(0, over), where).toBeLessThan(near)
          // and no more room does
          const more = solveRounds(
            loose,
            roomAtPrice(loose, least.share, cost, price, 1000),
            least.cuts,
            solver,
          )
          if (more.kind !== 'optimal') continue
          const found = more.answer.columns.at(-1) ?? NaN
          expect(price * Math.abs(found - most), where).toBeLessThan(20 * near)
          counts.rooms++
        }
      }
    }
    console.log(JSON.stringify(counts))
    expect(counts.costs).toBeGreaterThan(trains)
    expect(counts.rooms).toBeGreaterThan(trains / 2)
    expect(counts.circles).toBeGreaterThan(trains / 4)
    expect(counts.untold).toBeLessThan(counts.costs / 50)
    expect(spared.length).toBeGreaterThan(counts.costs)
  },
  counted(600_000, 3_600_000),
)
