export const budget: number
export function firstLoad(folder: string): { file: string; sent: number }[]
