import { strict } from './database'
import type { Photo } from './records'
import type { Shelf } from './shelf'

/** Keeps a picture of a job; resolves with its id when it is on the disk. */
export async function keepPhoto(
  shelf: Shelf,
  job: string,
  blob: Blob,
  made: number,
): Promise<string> {
  const id = crypto.randomUUID()
  const tx = (await shelf.open()).transaction('photos', 'readwrite', strict)
  await Promise.all([tx.store.put({ id, job, made, blob }), tx.done])
  return id
}

/** Pictures of a job, oldest first. */
export async function photosOf(shelf: Shelf, job: string): Promise<Photo[]> {
  const photos = await (await shelf.open()).getAllFromIndex('photos', 'job', job)
  return photos.sort((a, b) => a.made - b.made)
}

export async function dropPhoto(shelf: Shelf, id: string): Promise<void> {
  await (await shelf.open()).delete('photos', id)
}
