import { writeFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { version } from '../../package.json'
import { isoToday } from '../mechanics/day'
import { hotCheckAnswers, withFoundGrowth } from '../engine/fieldwork/hotCheck/hotChecks'
import { checkRead } from '../engine/plan/checkTrain'
import { everyStage, PlanningRun, type ReadTrain } from '../engine/planningRun'
import { trimPlan } from '../engine/trimPlan'
import { sureHolds } from '../engine/sureHolds'
import { holdsOf, type Holds } from '../engine/studies/holds/holdRows'
import { hotCheckText } from '../text/hotCheckText'
import { checkText } from '../text/checkText'
import { holdsText } from '../text/holdsText'
import { planText } from '../text/planText'
import { harmlessJson, harmlessLine } from '../language/harmless'
import { firstRefusals, type Refusal } from '../document/refusal'
import { readTrainText } from '../document/readTrain'
import { glpkSolver } from '../solvers/glpk'
import { readArguments, type CommandRequest } from './arguments'
import { answerJson } from '../json/answerJson'
import { hotChecksJson } from '../json/hotCheckJson'
import { reportJson } from '../json/planJson'
import { holdsJson } from '../json/holdsJson'
import { counted } from '../language/names'
import { printNames } from '../paper/page'
import { exitOf } from './exitStatus'
import { help } from './help'
import type { FilesRequest, LinesRequest } from './manyArguments'
import { modelOf } from './model'
import { pdfOf } from './pdf'
import { planFiles } from './planFiles'
import { planLines } from './planLines'
import { fileErrorText, fileStat, openFileStat, readText } from './readFile'
import { sheetFileOf } from './sheet'
import type { Shell } from './shell'
import { sinceFiles } from './since'
import { siteFiles } from './site'

type FileRequest = Exclude<Extract<CommandRequest, { file: string }>, LinesRequest>

type SinceRequest = Extract<CommandRequest, { command: 'since' }>
type SiteRequest = Extract<CommandRequest, { command: 'site' }>

/** Carries out one command; answers its exit status and never throws. */
export async function run(words: readonly string[], shell: Shell): Promise<number> {
  const request = readArguments(words)
  switch (request.command) {
    case 'help':
      shell.print(help)
      return 0
    case 'version':
      shell.print(`${version}\n`)
      return 0
    case 'refused':
      return refuse(request.refused, request.json, shell)
    case 'plan':
    case 'plan-lines':
    case 'plan-files':
    case 'holds':
    case 'check':
    case 'hotcheck':
    case 'model':
    case 'sheet':
    case 'since':
    case 'site':
      try {
        return await onTrains(request, shell)
      } catch (error) {
        const why = `the program failed: ${error instanceof Error ? error.message : String(error)}`
        return stop(why, request.json, shell)
      }
  }
}

async function onTrains(
  request: FileRequest | LinesRequest | FilesRequest | SinceRequest | SiteRequest,
  shell: Shell,
): Promise<number> {
  if (request.command === 'plan-lines') {
    const ended = await planLines(request, shell)
    return typeof ended === 'number' ? ended : refuse(ended, true, shell)
  }
  if (request.command === 'since') {
    const told = await sinceFiles(request, shell)
    if (typeof told !== 'string') return refuse(told, request.json, shell)
    shell.print(told)
    return 0
  }
  if (request.command === 'site') {
    const told = await siteFiles(request, shell)
    return typeof told === 'number' ? told : refuse(told, request.json, shell)
  }
  const many = request.command === 'plan' ? await folderOfTrains(request, shell) : request
  if (many.command !== 'plan-files') return onFile(many, shell)
  const ended = await planFiles(many, shell)
  return typeof ended === 'number' ? ended : refuse(ended, true, shell)
}

/** A folder in place of a file asks for all that are in it. */
async function folderOfTrains(
  request: Extract<CommandRequest, { command: 'plan' | 'holds' }>,
  { folder }: Shell,
): Promise<typeof request | FilesRequest> {
  const { file, sure, work } = request
  if (file === '-' || !(await fileStat(resolve(folder, file)))?.isDirectory()) return request
  return { command: 'plan-files', files: [file], json: true, sure, work }
}

async function onFile(request: FileRequest, shell: Shell): Promise<number> {
  const { file, json } = request
  if ('out' in request && (await isSameFile(file, request.out, shell)))
    return refuse(
      [{ at: request.out, why: 'this is the train file itself: give another file to write' }],
      json,
      shell,
    )
  const text = await readText(file, resolve(shell.folder, file), shell.input)
  if (!text.ok) return refuse(text.refused, json, shell)
  const read = readTrainText(text.text)
  if (!read.ok) return refuse(read.refused, json, shell)
  switch (request.command) {
    case 'check': {
      const report = checkRead(read.train)
      shell.print(
        json ? asJson(reportJson(report, read.train.units)) : checkText(read.train, report),
      )
      return 0
    }
    case 'hotcheck':
      return tellHotChecks(request, read, shell)
    case 'plan': {
      const answer = new PlanningRun(read, await glpkSolver(), request.work).answer({
        ...everyStage,
        sure: request.sure,
      })
      shell.print(json ? asJson(answerJson(answer, read.train)) : planText(read.train, answer))
      return exitOf[answer.status]
    }
    case 'holds': {
      // what binds in every choice takes as long again as the choices, and only programs read it
      const options = { prices: json, work: request.work }
      const solver = await glpkSolver()
      const { train } = read
      const sure = request.sure || train.plan.sure !== undefined
      const holds = sure ? sureHolds(train, solver, options) : holdsOf(train, solver, options)
      shell.print(json ? asJson(holdsJson(holds, train)) : holdsText(train, holds))
      return exitOfHolds(holds)
    }
    case 'model':
      return writeModel(request, read, shell)
    case 'sheet':
      return writeSheet(request, read, shell)
  }
}

/** Whether the file to write is the one that is read, by whatever name, link or path. */
async function isSameFile(file: string, out: string, { folder, input }: Shell): Promise<boolean> {
  const read = file === '-' ? openFileStat(input) : await fileStat(resolve(folder, file))
  const written = await fileStat(resolve(folder, out))
  // devices, such as /dev/null and terminals, hold nothing that could be lost
  return read?.isFile() === true && written?.dev === read.dev && written.ino === read.ino
}

/** A choice without an answer might have been the best, so a list with one is no full answer. */
function exitOfHolds({ rows, ranOut }: Holds): number {
  if (ranOut) return 3
  if (rows.some(({ fault }) => fault !== undefined)) return 3
  return rows.some(({ cost }) => cost !== undefined) ? 0 : 1
}

async function tellHotChecks(
  { json, out }: Extract<CommandRequest, { command: 'hotcheck' }>,
  read: ReadTrain,
  shell: Shell,
): Promise<number> {
  const solver = await glpkSolver()
  const answers = hotCheckAnswers(read, (corrected) => trimPlan(corrected, solver))
  if (out !== undefined) {
    const document = answers.reduce(
      (corrected, { check }) => withFoundGrowth({ document: corrected, train: read.train }, check),
      read.document,
    )
    try {
      await writeFile(resolve(shell.folder, out), `${JSON.stringify(document, null, 2)}\n`)
    } catch (error) {
      return refuse([{ at: out, why: `cannot be written: ${fileErrorText(error)}` }], json, shell)
    }
  }
  const written = out === undefined ? '' : `\nWrote ${harmlessLine(out)}: growth corrected.\n`
  shell.print(
    json
      ? asJson({
          ...(out !== undefined && { written: out }),
          hotChecks: hotChecksJson(answers, read.train.units),
        })
      : `${hotCheckText(read.train, answers)}${written}`,
  )
  return 0
}

async function writeModel(
  request: Extract<CommandRequest, { command: 'model' }>,
  read: ReadTrain,
  shell: Shell,
): Promise<number> {
  const model = modelOf(new PlanningRun(read, await glpkSolver()), request.format)
  if (model.status === 'stopped') return stop(model.why, request.json, shell)
  try {
    await writeFile(resolve(shell.folder, request.out), model.text)
  } catch (error) {
    const why = `cannot be written: ${fileErrorText(error)}`
    return refuse([{ at: request.out, why }], request.json, shell)
  }
  const { status, bound, columns, rows } = model
  shell.print(
    request.json
      ? asJson({ written: request.out, status, bound, columns, rows })
      : `Wrote ${harmlessLine(request.out)}: ${columns} columns, ${rows} rows.\n${model.says}\n`,
  )
  return 0
}

async function writeSheet(
  request: Extract<CommandRequest, { command: 'sheet' }>,
  read: ReadTrain,
  shell: Shell,
): Promise<number> {
  const { out, format, paper, print, json } = request
  const date = request.date ?? `printed ${isoToday(new Date())}`
  const sheet = sheetFileOf(read, await glpkSolver(), { size: paper, print, date })
  if (sheet.status === 'stopped') return stop(sheet.why, json, shell)
  let bytes: string | Uint8Array = sheet.html
  if (format === 'pdf') {
    const made = await pdfOf(sheet.html)
    if (!made.ok) return stop(made.why, json, shell)
    bytes = made.bytes
  }
  try {
    await writeFile(resolve(shell.folder, out), bytes)
  } catch (error) {
    const why = `cannot be written: ${fileErrorText(error)}`
    return refuse([{ at: out, why }], json, shell)
  }
  const { status, pages, revision, code } = sheet
  shell.print(
    json
      ? asJson({ written: out, status, for: print, paper, pages, revision, code })
      : `Wrote ${harmlessLine(out)}, ${printNames[print]}: ${counted(pages, 'page', 'pages')}, revision ${revision}, code ${code}.\n${sheet.says}\n`,
  )
  return exitOf[status]
}

function refuse(refused: readonly Refusal[], json: boolean, shell: Shell): number {
  const told = firstRefusals(refused)
  if (json) shell.print(asJson({ refused: told }))
  else
    for (const { at, why } of told) complain(`refused: ${at === '' ? why : `${at}: ${why}`}`, shell)
  return 2
}

function stop(why: string, json: boolean, shell: Shell): number {
  if (json) shell.print(asJson({ status: 'stopped', why }))
  else complain(`stopped: ${why}`, shell)
  return 3
}

/** File names and texts of a file stand in what is complained of: nothing in them steers the terminal. */
const complain = (sentence: string, shell: Shell): void => {
  shell.complain(`${harmlessLine(sentence)}\n`)
}

/** The same value gives the same bytes: keys stand in the order in which the engine writes them. */
const asJson = (value: unknown): string => `${harmlessJson(JSON.stringify(value, null, 2))}\n`
