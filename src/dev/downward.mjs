import { relative, resolve } from 'node:path'
import { upward } from './layers.mjs'

/** ESLint rule: an import may not lead up the house (see layers.mjs). */
export const downward = {
  meta: {
    type: 'problem',
    docs: { description: 'a file imports only from its own folder and from folders below it' },
    messages: { upward: '{{why}}' },
    schema: [],
  },
  create(context) {
    const from = named(context, context.filename)
    const look = (source) => {
      if (typeof source?.value !== 'string' || !source.value.startsWith('.')) return
      const to = named(context, resolve(context.filename, '..', source.value))
      const why = upward(from, to)
      if (why !== undefined) context.report({ node: source, messageId: 'upward', data: { why } })
    }
    return {
      ImportDeclaration: (node) => look(node.source),
      ExportNamedDeclaration: (node) => look(node.source),
      ExportAllDeclaration: (node) => look(node.source),
      ImportExpression: (node) => look(node.source),
    }
  },
}

const named = (context, file) => relative(context.cwd, file).split('\\').join('/')
