/** Sets of nodes that reach each other, two or more a set (Tarjan's strongly connected components). */
export function rings(graph) {
  const order = new Map()
  const low = new Map()
  const stack = []
  const found = []
  const visit = (node) => {
    order.set(node, order.size)
    low.set(node, order.get(node))
    stack.push(node)
    for (const next of graph.get(node) ?? []) {
      if (!order.has(next)) {
        visit(next)
        low.set(node, Math.min(low.get(node), low.get(next)))
      } else if (stack.includes(next)) low.set(node, Math.min(low.get(node), order.get(next)))
    }
    if (low.get(node) !== order.get(node)) return
    const ring = stack.splice(stack.indexOf(node))
    if (ring.length > 1) found.push(ring.sort())
  }
  for (const node of graph.keys()) if (!order.has(node)) visit(node)
  return found
}

/** The level of every node: 1 where it imports nothing, else one above the highest it imports. */
export function levels(graph) {
  const level = new Map()
  const inside = new Map(rings(graph).flatMap((ring) => ring.map((node) => [node, new Set(ring)])))
  const of = (node) => {
    const known = level.get(node)
    if (known !== undefined) return known
    level.set(node, 1) // a ring counts as one level
    let highest = 0
    for (const next of graph.get(node) ?? [])
      if (!inside.get(node)?.has(next)) highest = Math.max(highest, of(next))
    level.set(node, highest + 1)
    return highest + 1
  }
  for (const node of graph.keys()) of(node)
  return level
}
