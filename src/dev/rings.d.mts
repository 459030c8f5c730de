export function rings(graph: ReadonlyMap<string, Iterable<string>>): string[][]
export function levels(graph: ReadonlyMap<string, Iterable<string>>): Map<string, number>
