import GLPK, { type GLPK as Glpk } from 'glpk.js/node'
import { callsOf, type GlpkCalls } from './glpkCalls'

/** An instance of GLPK: by its package, and by its own calls where they are known. */
export interface GlpkInstance {
  readonly glpk: Glpk
  readonly calls: GlpkCalls | undefined
}

/** Makes one after the other: what stands for the console and for WebAssembly meanwhile stands for all. */
let making: Promise<unknown> = Promise.resolve()

/**
 * An instance of GLPK that says nothing. It takes its two ways to speak, which are the console's, when it is made,
 * and no option of the package changes that: standard output belongs to the answer, and what it has to say of a
 * program that it cannot take comes as an exception too. Nor does the package hand out its calls, which are taken from what
 * it instantiates.
 */
export function quietGlpk(): Promise<GlpkInstance> {
  const made = making.then(make)
  making = made.catch(() => undefined)
  return made
}

async function make(): Promise<GlpkInstance> {
  const spoken = { log: console.log, error: console.error }
  const { Instance } = WebAssembly
  const instances: WebAssembly.Instance[] = []
  console.log = console.error = () => undefined
  WebAssembly.Instance = new Proxy(Instance, {
    construct(target, [module, imports]: [WebAssembly.Module, WebAssembly.Imports?]) {
      const instance = new target(module, imports)
      instances.push(instance)
      return instance
    },
  })
  try {
    const glpk = await GLPK()
    const [instance, another] = instances
    return { glpk, calls: instance && !another ? callsOf(instance) : undefined }
  } finally {
    WebAssembly.Instance = Instance
    Object.assign(console, spoken)
  }
}
