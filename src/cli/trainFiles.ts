import { readdir } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import type { Refusal } from '../document/refusal'
import { fileErrorText, fileStat } from './readFile'

/** The files that are named, and those of folders that end in .json, by name; hidden ones and inner folders are left out. */
export async function trainFiles(
  names: readonly string[],
  folder: string,
): Promise<readonly string[] | readonly Refusal[]> {
  const files: string[] = []
  for (const name of names) {
    const path = resolve(folder, name)
    if (!(await fileStat(path))?.isDirectory()) {
      files.push(name)
      continue
    }
    try {
      const inside = (await readdir(path, { withFileTypes: true }))
        .filter((entry) => !entry.isDirectory() && /^[^.].*\.json$/i.test(entry.name))
        .map((entry) => join(name, entry.name))
        .sort()
      if (inside.length === 0)
        return [{ at: name, why: 'a folder without train files: their names end in .json' }]
      files.push(...inside)
    } catch (error) {
      return [{ at: name, why: fileErrorText(error) }]
    }
  }
  return files
}

/** Whether files were found, and none refused. */
export const isNames = (
  files: readonly string[] | readonly Refusal[],
): files is readonly string[] => typeof files[0] === 'string'
