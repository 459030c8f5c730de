/** What `import ... from 'holdfast/solver'` gives: GLPK, ready to be handed to a run. */
export { glpkSolver } from '../solvers/glpk'
