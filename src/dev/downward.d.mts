import type { Rule } from 'eslint'

export const downward: Rule.RuleModule
