import { useSheet } from './sheet'

useSheet()
