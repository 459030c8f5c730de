export function findBrowser(): string | undefined
export const browserAdvice: string
export function canInstallBrowser(): boolean
export function installBrowser(): void
