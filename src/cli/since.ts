import { resolve } from 'node:path'
import { readTrainText } from '../document/readTrain'
import type { Refusal } from '../document/refusal'
import { notComparable } from '../engine/fieldwork/since/changes'
import { sinceOf } from '../engine/fieldwork/since/since'
import { sinceJson } from '../json/sinceJson'
import { harmlessJson } from '../language/harmless'
import type { Train } from '../mechanics/train'
import { sinceText } from '../text/sinceText'
import type { CommandRequest } from './arguments'
import { readText } from './readFile'
import type { Shell } from './shell'

/** What `since` prints, or why it cannot compare the two files. */
export async function sinceFiles(
  { earlier, file, json }: Extract<CommandRequest, { command: 'since' }>,
  shell: Shell,
): Promise<string | readonly Refusal[]> {
  if (earlier === '-' && file === '-')
    return [{ at: '-', why: 'standard input is one file: give the other one by its name' }]
  const [then, now] = [await trainIn(earlier, shell), await trainIn(file, shell)]
  const refused = [then, now].flatMap((one) => ('refused' in one ? one.refused : []))
  if ('refused' in then || 'refused' in now) return refused
  const apart = notComparable(then, now)
  if (apart.length > 0) return apart.map((why) => ({ at: file, why }))
  const since = sinceOf(then, now)
  return json
    ? `${harmlessJson(JSON.stringify(sinceJson(now, since), null, 2))}\n`
    : sinceText(now, since)
}

/** The train of a file; what is wrong with it named by the file, since there are two. */
async function trainIn(
  file: string,
  { folder, input }: Shell,
): Promise<Train | { readonly refused: readonly Refusal[] }> {
  const text = await readText(file, resolve(folder, file), input)
  if (!text.ok) return text
  const read = readTrainText(text.text)
  return read.ok
    ? read.train
    : { refused: read.refused.map(({ at, why }) => ({ at: `${file}: ${at}`, why })) }
}
