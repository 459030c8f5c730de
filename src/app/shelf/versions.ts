import { printOf } from '../../document/contentPrint'
import type { SavedEdit, SavedSheet, Version } from './records'

/** Versions of a job that stay. */
export const mostVersions = 50

/** Edits of one name that follow each other sooner than this (ms) make one version. */
const oneEdit = 2000

/** Whether an edit goes on with what the newest version began: typing on in one field. */
export const goesOn = (last: SavedEdit, edit: SavedEdit): boolean =>
  last.what === edit.what && edit.when - last.when < oneEdit

/** What the list of versions shows of one. */
export type VersionLine = Pick<Version, 'n' | 'what' | 'when'>

/** The number that a sheet's version gets: the newest one's again while the same edit goes on. */
export function numberAfter(last: Version | undefined, edit: SavedEdit): number {
  if (!last) return 1
  return goesOn(last, edit) ? last.n : last.n + 1
}

export const versionOf = (job: string, n: number, sheet: SavedSheet & SavedEdit): Version => ({
  job,
  n,
  what: sheet.what,
  when: sheet.when,
  text: sheet.text,
  entries: sheet.entries,
  hand: sheet.hand,
  print: printOf(sheet.text),
})

/** Keys of the versions that are beyond the last ones when the newest is n. */
export const olderVersions = (job: string, n: number): IDBKeyRange | undefined =>
  n > mostVersions ? IDBKeyRange.bound([job], [job, n - mostVersions]) : undefined
