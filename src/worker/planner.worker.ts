import { servePlanner } from './servePlanner'

servePlanner(self)
