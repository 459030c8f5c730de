import { handOver, fileNameOf } from '../services/handOver'
import type { HandPlan } from '../../engine/studies/hand/handPlan'
import type { Damaged } from './damaged'
import type { Parting } from './keeper'
import type { Note } from './note'
import { called, type SavedEdit } from './records'
import { clockOf } from './times'

/** What the shelf says when pages meet on one job. */
export const partedNote = ({ from, to }: Parting, open: () => unknown): Note => ({
  key: 'pages',
  title: `${called(from)} was changed in another tab at the same time; both are kept`,
  says: [`What you see is now the job "${called(to)}". The other tab's is on the shelf.`],
  acts: [{ label: "Open the other tab's", run: open }],
})

export const followedNote = ({ what, when }: SavedEdit): Note => ({
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

export const exampleNote = (title: string, why: string, again: () => unknown): Note => ({
  key: 'example',
  title: `The example ${title} could not be loaded: ${why}`,
  acts: [{ label: 'Try again', run: again }],
})

/** What is kept and is no train is left as it is, under its own name. */
export const damagedNote = (all: readonly Damaged[]): Note => ({
  key: 'damaged',
  title: 'What is kept here is damaged in part, and was not opened',
  says: [
    ...all.map(({ name, why }) => `${name}: ${why}.`),
    'It stays as it is. Saved as a file, its text can be looked at and mended.',
  ],
  acts: [
    {
      label: 'Save what is there',
      run: () => {
        for (const { name, text } of all)
          handOver(new Blob([text], { type: 'text/plain' }), fileNameOf(name, 'txt'))
      },
    },
  ],
})

/** Where each machine stands by hand, by its id and way: from as found; ways it did not go are left out. */
export const handWords = ({ touched, motions }: HandPlan): Record<string, string> =>
  Object.fromEntries(
    touched.flatMap((id) => {
      const { tx = 0, ty = 0, tz = 0, sy = 0, sz = 0, roll = 0 } = motions[id] ?? {}
      const ways: [string, number, string][] = [
        ['rise', tz, went(tz, 'up', 'down')],
        ['side', ty, went(ty, "toward 3 o'clock", "toward 9 o'clock")],
        ['along', tx, went(tx, 'right', 'left')],
        ['slope of rise', sz, turned(sz)],
        ['slope of side', sy, turned(sy)],
        ['roll', roll, turned(roll)],
      ]
      return ways
        .filter(([, amount]) => amount !== 0)
        .map(([way, , words]) => [`${id}, ${way}`, words] as const)
    }),
  )

const went = (um: number, plus: string, minus: string): string =>
  `${Math.abs(um).toFixed(1)} µm ${um < 0 ? minus : plus}`
const turned = (mrad: number): string => `${mrad < 0 ? '−' : '+'}${Math.abs(mrad).toFixed(3)} mrad`
