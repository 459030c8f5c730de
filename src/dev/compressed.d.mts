export function compressFolder(folder: string): Promise<void>
