import type { HandPlan } from '../../engine/hand/handPlan'
import type { Parting } from './keeper'
import type { Note } from './note'
import { called, type Edit } from './records'
import { clockOf } from './times'

/** What the shelf says when pages meet on one job. */
export const partedNote = ({ from, to }: Parting, open: () => unknown): Note => ({
  key: 'pages',
  title: `${called(from)} was changed in another tab at the same time; both are kept`,
  says: [`What you see is now the job "${called(to)}". The other tab's is on the shelf.`],
  acts: [{ label: "Open the other tab's", run: open }],
})

export const followedNote = ({ what, when }: Edit): Note => ({
  key: 'pages',
  title: `Another tab changed this job at ${clockOf(when)}: ${what}`,
  says: ['The sheet follows it; undo takes it back in both.'],
})

export const takenOffNote: Note = {
  key: 'removed',
  title: 'Another tab took this job off the shelf',
  says: ['It comes back with your next change.'],
}

export const leftNote = (names: readonly string[]): Note => ({
  key: 'left',
  title: 'A tab was closed before its last change was kept, and the job has gone on since',
  says: [`The change is on the shelf as ${names.map((name) => `"${name}"`).join(', ')}.`],
})

/** Where each machine stands by hand, by its id: from as found. */
export const handWords = ({ touched, motions }: HandPlan): Record<string, string> =>
  Object.fromEntries(
    touched.map((id) => {
      const { tx = 0, ty = 0, tz = 0, sy = 0, sz = 0 } = motions[id] ?? {}
      return [
        id,
        `${toTenths(tz)} µm up, ${toTenths(ty)} µm toward 3 o'clock, ${toTenths(tx)} µm right; turned ${toThousandths(sz)} mrad in rise, ${toThousandths(sy)} mrad to the side`,
      ]
    }),
  )

const toTenths = (um: number): string => String(Math.round(10 * um) / 10 + 0)
const toThousandths = (mrad: number): string => String(Math.round(1000 * mrad) / 1000 + 0)
