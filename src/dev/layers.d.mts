export const rooms: readonly [room: string, about: string, inner?: readonly string[]][]
export function folderOf(file: string): string | undefined
export function roomOf(file: string): string | undefined
export function upward(from: string, to: string): string | undefined
