import { glpkSolver } from '../../src/solvers/glpk'
import { conformance } from './conformance'

conformance('the GLPK solver', glpkSolver)
