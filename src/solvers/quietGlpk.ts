import GLPK, { type GLPK as Glpk } from 'glpk.js/node'

/** Instances that are being made, and how the console spoke before. */
let making = 0
let spoken: Pick<Console, 'log' | 'error'> | undefined

/**
 * An instance of GLPK that says nothing. It takes its two ways to speak, which are the console's, when it is made,
 * and no option of the package changes that: standard output belongs to the answer, and what it has to say of a
 * program that it cannot take comes as an exception too.
 */
export async function quietGlpk(): Promise<Glpk> {
  making++
  spoken ??= { log: console.log, error: console.error }
  console.log = console.error = () => undefined
  try {
    return await GLPK()
  } finally {
    making--
    if (making === 0) {
      Object.assign(console, spoken)
      spoken = undefined
    }
  }
}
