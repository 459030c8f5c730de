import GLPK, { type GLPK as Glpk } from 'glpk.js/node'
import { callsOf, type GlpkCalls } from './glpkCalls'

/** An instance of GLPK: by its package, and by its own calls where they are known. */
export interface GlpkInstance {
  readonly glpk: Glpk
  /** Its program as it was compiled: another instance can be made of it. */
  readonly module: WebAssembly.Module | undefined
  readonly calls: GlpkCalls | undefined
}

/** Makes one after the other: what stands for the console and for WebAssembly meanwhile stands for all. */
let making: Promise<unknown> = Promise.resolve()

/**
 * An instance of GLPK that says nothing. It takes its two ways to speak, which are the console's, when it is made,
 * and no option of the package changes that: standard output belongs to the answer, and what it has to say of a
 * program that it cannot take comes as an exception too. Nor does the package hand out its calls, which are taken from what
 * it instantiates.
 * @param compiled its program, if it is compiled already; the package itself compiles anew for every instance
 */
export function quietGlpk(compiled?: WebAssembly.Module): Promise<GlpkInstance> {
  const made = making.then(() => make(compiled))
  making = made.catch(() => undefined)
  return made
}

async function make(compiled?: WebAssembly.Module): Promise<GlpkInstance> {
  const spoken = { log: console.log, error: console.error }
  const { Instance, Module } = WebAssembly
  const instances: WebAssembly.Instance[] = []
  let used: WebAssembly.Module | undefined
  console.log = console.error = () => undefined
  WebAssembly.Instance = new Proxy(Instance, {
    construct(target, [module, imports]: [WebAssembly.Module, WebAssembly.Imports?]) {
      const instance = new target(module, imports)
      instances.push(instance)
      used = module
      return instance
    },
  })
  if (compiled) WebAssembly.Module = new Proxy(Module, { construct: () => compiled })
  try {
    const glpk = await GLPK()
    const [instance, another] = instances
    return { glpk, module: used, calls: instance && !another ? callsOf(instance) : undefined }
  } finally {
    Object.assign(WebAssembly, { Instance, Module })
    Object.assign(console, spoken)
  }
}
