import { resolve } from 'node:path'
import { readTrainText } from '../document/readTrain'
import type { Refusal } from '../document/refusal'
import { byUrgency, trainState } from '../engine/fieldwork/site/trainState'
import { siteJson, type SiteTrain, type UnreadTrain } from '../json/siteJson'
import { harmlessJson } from '../language/harmless'
import { siteText } from '../text/siteText'
import { isoToday } from '../mechanics/day'
import type { CommandRequest } from './arguments'
import { refusedExit } from './exitStatus'
import { readText } from './readFile'
import type { Shell } from './shell'
import { isNames, trainFiles } from './trainFiles'

/**
 * Prints how every train of some files stands and what is due; a file that cannot be read is told and stops nothing.
 * @returns the exit status, or why no file was looked at
 */
export async function siteFiles(
  { files, json, date }: Extract<CommandRequest, { command: 'site' }>,
  shell: Shell,
): Promise<number | readonly Refusal[]> {
  const names = await trainFiles(files, shell.folder)
  if (!isNames(names)) return names
  const today = date ?? isoToday(new Date())
  const trains: SiteTrain[] = []
  const unread: UnreadTrain[] = []
  for (const file of names) {
    const text = await readText(file, resolve(shell.folder, file), shell.input)
    const read = text.ok ? readTrainText(text.text) : text
    if (read.ok) trains.push({ file, train: read.train, state: trainState(read, today) })
    else unread.push({ file, refused: read.refused })
  }
  trains.sort((a, b) => byUrgency(a.state, b.state))
  shell.print(
    json
      ? `${harmlessJson(JSON.stringify(siteJson(today, trains, unread), null, 2))}\n`
      : siteText(today, trains, unread),
  )
  return unread.length === 0 ? 0 : refusedExit
}
