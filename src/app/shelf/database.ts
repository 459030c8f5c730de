import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import { DamagedError } from './damaged'
import type { Head, Job, Photo, Version } from './records'

/** The tables of the shelf. Texts lie apart from what is listed, so that a list loads none of them. */
interface Tables extends DBSchema {
  jobs: { key: string; value: Job; indexes: { match: string } }
  heads: { key: string; value: Head }
  versions: { key: [string, number]; value: Version; indexes: { print: string } }
  photos: { key: string; value: Photo; indexes: { job: string } }
  meta: { key: string; value: string }
}

export type Database = IDBPDatabase<Tables>

const name = 'holdfast-shelf'
const version = 1

/**
 * Opens the shelf's database, making its tables where there are none.
 * @param gone is told when the connection is lost: the browser cleared it, or a newer page needs it
 */
export function openDatabase(gone: () => void): Promise<Database> {
  return openDB<Tables>(name, version, {
    upgrade(database) {
      database.createObjectStore('jobs', { keyPath: 'id' }).createIndex('match', 'match')
      database.createObjectStore('heads', { keyPath: 'job' })
      database
        .createObjectStore('versions', { keyPath: ['job', 'n'] })
        .createIndex('print', 'print')
      database.createObjectStore('photos', { keyPath: 'id' }).createIndex('job', 'job')
      database.createObjectStore('meta')
    },
    blocking(_now, _wanted, event) {
      ;(event.target as IDBDatabase).close()
      gone()
    },
    terminated: gone,
  })
}

/** Every row of a job: keys are [job, anything]. */
export const rowsOf = (job: string): IDBKeyRange => IDBKeyRange.bound([job], [job, []], false, true)

/** Written to the disk itself, not only handed to the system, before it counts as kept. */
export const strict = { durability: 'strict' } as const

/** A fault of the database whose message says in words why nothing can be kept. */
export class StorageError extends Error {
  constructor(cause: unknown) {
    super(storageErrorText(cause), { cause })
  }
}

/** Why the shelf did not do what it was asked for, in words. */
export function storageErrorText(error: unknown): string {
  if (error instanceof StorageError) return error.message
  if (error instanceof DamagedError) return `what is kept there is no train (${error.message})`
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  if (name === 'QuotaExceededError') return 'the disk is full, or this page may not use more of it'
  if (name === 'VersionError') return 'a newer Holdfast keeps its jobs here: load this page again'
  if (name === 'SecurityError' || name === 'InvalidStateError' || name === 'ReferenceError')
    return 'this browser keeps nothing here: a private window, or storage is switched off'
  if (name === 'TimeoutError') return 'the disk does not answer'
  const message = error instanceof Error ? error.message : String(error)
  return `the browser's own storage failed (${message || name})`
}
