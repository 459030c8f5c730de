export function importsOf(root: string, folder?: string): Map<string, string[]>
