import { resolve } from 'node:path'
import { readTrainText } from '../document/readTrain'
import type { Refusal } from '../document/refusal'
import { notComparable } from '../engine/fieldwork/since/changes'
import { historyOf, trendsOf } from '../engine/fieldwork/since/history'
import { overTimes, sinceOf } from '../engine/fieldwork/since/since'
import { historyJson } from '../json/historyJson'
import { sinceJson } from '../json/sinceJson'
import { harmlessJson } from '../language/harmless'
import type { Train } from '../mechanics/train'
import { historyText } from '../text/historyText'
import { sinceText, timesText } from '../text/sinceText'
import type { CommandRequest } from './arguments'
import { readText } from './readFile'
import type { Shell } from './shell'

/** What `since` prints, or why it cannot compare the files. */
export async function sinceFiles(
  { files, json }: Extract<CommandRequest, { command: 'since' }>,
  shell: Shell,
): Promise<string | readonly Refusal[]> {
  if (files.filter((file) => file === '-').length > 1)
    return [{ at: '-', why: 'standard input is one file: give the others by their names' }]
  const trains: Train[] = []
  const refused: Refusal[] = []
  for (const file of files) {
    const read = await trainIn(file, shell)
    if ('refused' in read) refused.push(...read.refused)
    else trains.push(read)
  }
  const now = trains.at(-1)
  if (refused.length > 0 || !now) return refused
  const apart = trains.flatMap((train, i) =>
    notComparable(train, now).map((why) => ({ at: files[i] ?? '', why })),
  )
  if (apart.length > 0) return apart
  if (trains.length === 1) return ofOneFile(now, files[0] ?? '', json)
  const times = trains.flatMap((then, i) => {
    const found = trains[i + 1]
    if (i % 2 === 1 || !found) return []
    return [{ name: `${files[i] ?? ''}, ${files[i + 1] ?? ''}`, since: sinceOf(then, found) }]
  })
  const [first] = times
  if (first && times.length === 1)
    return json ? asText(sinceJson(now, first.since)) : sinceText(now, first.since)
  const together = overTimes(
    now,
    times.map(({ since }) => since.changes),
  )
  return json
    ? asText({
        times: times.map(({ since }) => sinceJson(now, since)),
        together: sinceJson(now, together),
      })
    : timesText(now, times, together)
}

/** What walked between the outages that one file keeps. */
function ofOneFile(train: Train, file: string, json: boolean): string | readonly Refusal[] {
  if (train.outages.length === 0)
    return [
      {
        at: file,
        why: 'the file keeps no outages: give two files, as left then and as found now',
      },
    ]
  const [history, trends] = [historyOf(train), trendsOf(train)]
  return json ? asText(historyJson(train, history, trends)) : historyText(train, history, trends)
}

const asText = (value: unknown): string => `${harmlessJson(JSON.stringify(value, null, 2))}\n`

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
