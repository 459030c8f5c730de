/** Stands in for Node's `module` in the browser build: the solver package asks for it only under Node. */
export const createRequire = (): never => {
  throw new Error('createRequire exists under Node only')
}
