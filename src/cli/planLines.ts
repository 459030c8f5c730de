import { createReadStream } from 'node:fs'
import { resolve } from 'node:path'
import type { Refusal } from '../document/refusal'
import { glpkSolver } from '../solvers/glpk'
import { answerLost, exitOfMany } from './exitStatus'
import { inputLines, type InputLine } from './lineStream'
import type { LinesRequest } from './manyArguments'
import { fileErrorText, largestFile, utf8Text, type FileText } from './readFile'
import { send, type Shell } from './shell'
import { answerLine, trainAnswer } from './trainAnswer'

/**
 * Plans the trains of a stream, one a line, and answers one a line, in order. The next line is read when the answer of
 * the one before has gone out. Blank lines have no answer, and count.
 * @returns the exit status, or why the stream cannot be read
 */
export async function planLines(
  request: LinesRequest,
  shell: Shell,
): Promise<number | readonly Refusal[]> {
  const { file } = request
  const solver = await glpkSolver()
  let exit = 0
  try {
    const stream = file === '-' ? shell.input : createReadStream(resolve(shell.folder, file))
    for await (const line of inputLines(stream, largestFile)) {
      const text = textOf(line)
      if (text.ok && text.text.trim() === '') continue
      const told = trainAnswer(text, solver, request)
      exit = exitOfMany(exit, told.exit)
      if (!(await send(shell, answerLine({ line: line.number }, told)))) return answerLost
    }
  } catch (error) {
    return [{ at: file === '-' ? 'standard input' : file, why: fileErrorText(error) }]
  }
  return exit
}

/** The text of a line; what is wrong with it is told of the document, whose line is told beside it. */
function textOf({ bytes }: InputLine): FileText {
  const refuse = (why: string): FileText => ({ ok: false, refused: [{ at: '', why }] })
  if (bytes === undefined)
    return refuse(
      `the line is longer than 10 MB: at most ${largestFile} bytes are read; is each train on a line of its own?`,
    )
  return utf8Text(bytes, refuse)
}
